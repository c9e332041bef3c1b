// Texts that come from outside the page or stay behind in the browser.

const KEY = "quirefit.job";
const OURS = /^\ufeff?\s*\{[^]*"format"\s*:\s*"quirefit-/; // a job or shop as text
const MOST = 4000000; // bytes read of a file; a job has a few thousand

/** What was kept last time; nothing where the browser keeps nothing for files. */
export function recall() {
  try {
    return localStorage.getItem(KEY);
  } catch {
    return null;
  }
}

/** Keeps a text for next time, or forgets with an empty one. False where that cannot be done. */
export function remember(text) {
  try {
    if (text) localStorage.setItem(KEY, text);
    else localStorage.removeItem(KEY);
    return true;
  } catch {
    return false;
  }
}

/** Saves a text, or bytes, as a file. */
export function download(name, content) {
  const link = document.createElement("a");
  link.href = URL.createObjectURL(new Blob([content]));
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 60000); // a slow disk may still be reading it
}

/** Saves a drawing as a picture of so many dots; where the browser makes none, the drawing itself. */
export function paint(name, svg, width, height) {
  const image = new Image();
  const save = (blob) => (blob ? download(name, blob) : download(name.replace(/png$/, "svg"), svg));
  image.onerror = () => save();
  image.onload = () => {
    const canvas = document.createElement("canvas");
    [canvas.width, canvas.height] = [width, height];
    canvas.getContext("2d").drawImage(image, 0, 0, canvas.width, canvas.height);
    canvas.toBlob(save);
  };
  image.src = `data:image/svg+xml,${encodeURIComponent(svg)}`;
}

/** Puts a text on the clipboard, the old way where the new one is refused. */
export async function copy(text) {
  try {
    await navigator.clipboard.writeText(text);
  } catch {
    const held = document.activeElement;
    const sheet = document.createElement("textarea");
    sheet.value = text;
    document.body.append(sheet);
    sheet.select();
    document.execCommand("copy");
    sheet.remove();
    held.focus({ preventScroll: true });
  }
}

/**
 * Files chosen, dropped or pasted, and pasted text, become `file` events. Gives back what tells the
 * latest of them, whole: the session says where more than its beginning is wanted.
 */
export function listen({ on, tell, root }) {
  let latest = new Blob();
  const read = async (file) => {
    // A file that cannot be read comes as an empty one; the session finds the words.
    const bytes = await file.slice(0, MOST).arrayBuffer().catch(() => new ArrayBuffer(0));
    const text = new TextDecoder("utf-8", { ignoreBOM: true }).decode(bytes); // its mark is kept
    latest = file;
    tell("file", file.name ?? "", text);
  };
  const carries = (transfer) => transfer && transfer.types.includes("Files");
  const over = (yes) => root.getElementById("page").toggleAttribute("data-drop", yes);

  on("change", (_, control) => {
    if (control.type !== "file" || !control.files.length) return;
    read(control.files[0]);
    control.value = ""; // so that choosing the same file again is a change
  });
  on("dragover", (event) => {
    if (!carries(event.dataTransfer)) return;
    event.preventDefault();
    over(true);
  });
  on("dragleave", (event) => event.relatedTarget || over(false));
  on("drop", (event) => {
    if (!carries(event.dataTransfer)) return;
    event.preventDefault();
    over(false);
    read(event.dataTransfer.files[0]);
  });
  on("paste", (event, target) => {
    const { clipboardData: data } = event;
    const text = data.getData("text");
    // Into a field goes what a person would type; cells of a table bring their picture as a file along.
    const typed = target.closest("input, textarea, select") && !OURS.test(text);
    if (typed && (text || !carries(data))) return;
    event.preventDefault();
    read(carries(data) && !OURS.test(text) ? data.files[0] : new Blob([text]));
  });
  return () => latest;
}
