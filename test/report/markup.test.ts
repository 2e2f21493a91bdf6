import { html } from "../../src/report/markup.ts";

test("what is put into a template is text, in an attribute as well", () => {
  expect(html`<p title="${`"><script>`}">${"a<b> & 'c'"}</p>`.html).toBe('<p title="&quot;&gt;&lt;script&gt;">a&lt;b&gt; &amp; &#39;c&#39;</p>');
});

test("markup goes in as it is, one piece or many", () => {
  expect(html`<ul>${["a", "<b>"].map((item) => html`<li>${item}</li>`)}</ul>`.html).toBe("<ul><li>a</li><li>&lt;b&gt;</li></ul>");
});

test("nothing and false leave no trace, and a space stays", () => {
  expect(html`${null}${undefined}${false}<i class="a${" b"}"></i>`.html).toBe('<i class="a b"></i>');
});

test("signs that steer a terminal or turn the writing round are left out", () => {
  expect(html`${"x\u202egnp\u0000\u0007\u2066y"}`.html).toBe("xgnpy");
});
