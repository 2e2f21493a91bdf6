// Style sheets are the bundler's: where a test loads a part of the pane by itself, there are none.
module.exports = {};
