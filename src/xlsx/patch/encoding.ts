/**
 * Parts are UTF-8 or, with a mark before them, UTF-16. They are worked on as UTF-8, in which a byte of
 * ASCII is never part of another character.
 */
export interface Encoded {
  utf8: Uint8Array;
  /** Back to how the part was written. */
  back(utf8: Uint8Array): Uint8Array;
}

export function encodingOf(bytes: Uint8Array): Encoded {
  const little = bytes[0] === 0xff && bytes[1] === 0xfe;
  if (!little && !(bytes[0] === 0xfe && bytes[1] === 0xff)) return { utf8: bytes, back: (utf8) => utf8 };
  const text = new TextDecoder(little ? "utf-16le" : "utf-16be").decode(bytes);
  return { utf8: new TextEncoder().encode(text), back: (utf8) => utf16(new TextDecoder().decode(utf8), little) };
}

function utf16(text: string, little: boolean): Uint8Array {
  const bytes = new Uint8Array(2 * text.length + 2);
  const view = new DataView(bytes.buffer);
  view.setUint16(0, 0xfeff, little);
  for (let i = 0; i < text.length; i++) view.setUint16(2 * i + 2, text.charCodeAt(i), little);
  return bytes;
}
