// The blocks of the page that the build has packed: deflated, then base64.

/** The bytes that a text holds in base64. */
export const decode = (text) =>
  Uint8Array.fromBase64
    ? Uint8Array.fromBase64(text)
    : Uint8Array.from(atob(text), (letter) => letter.charCodeAt(0));

/** What a block holds, as something to be read like an answer from afar. */
export const unpack = (text) =>
  new Response(new Blob([decode(text)]).stream().pipeThrough(new DecompressionStream("deflate")));
