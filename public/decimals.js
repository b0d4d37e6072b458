// Numbers with a decimal comma, for those who write them so. The program makes every text with a point; here
// each that comes into the document or onto a canvas gets the comma. Loaded only where it is wanted.
//
// A number is digits on both sides of one point. Not numbers: versions (1.2.3), steel numbers (1.2842), what
// stands behind a letter or slash, what is quoted between “ and ” because somebody wrote it, and what lies in an
// element that is not to be translated.
const NUMBER = /“[^”]*”|(?<![\p{L}\d.,_/#@])(?!1\.(?!0000)\d{4}(?!\d))(\d+)\.(\d+)(?![\d/]|\.\d)/gu;
const KEPT = "[translate=no], textarea, script, style, pre, code";
const WORDS = ["aria-label", "aria-valuetext", "title", "alt", "placeholder"];

export const inComma = (text) =>
  text.includes(".") ? text.replace(NUMBER, (all, whole, part) => (whole ? `${whole},${part}` : all)) : text;
// A drawing's texts, not its coordinates.
const drawing = (svg) => svg.replace(/>[^<]+/g, inComma);

// Texts and attributes that are shown otherwise than they were made, and both forms of each.
const changed = new WeakMap();
let isComma = false;
const made = (node) => {
  const known = changed.get(node);
  return known?.shown === node.nodeValue ? known.made : node.nodeValue;
};
const showOne = (node, element) => {
  if (!node || !element) return;
  const text = made(node);
  let shown = isComma ? inComma(text) : text;
  if (shown !== text && element.closest(KEPT)) shown = text;
  if (shown === node.nodeValue) return;
  changed.set(node, { made: text, shown });
  node.nodeValue = shown;
};
const showAll = (within) => {
  const walker = document.createTreeWalker(within, NodeFilter.SHOW_ELEMENT | NodeFilter.SHOW_TEXT);
  for (let node = within; node; node = walker.nextNode()) {
    if (node.nodeType === Node.TEXT_NODE) showOne(node, node.parentElement);
    else for (const name of WORDS) showOne(node.getAttributeNode?.(name), node);
  }
};

let isFollowed = false;
const follow = () => {
  if (isFollowed) return;
  isFollowed = true;
  new MutationObserver((changes) => {
    if (!isComma) return;
    for (const { type, target, attributeName, addedNodes } of changes) {
      if (type === "childList") addedNodes.forEach(showAll);
      else if (type === "characterData") showOne(target, target.parentElement);
      else showOne(target.getAttributeNode(attributeName), target);
    }
  }).observe(document.body, { subtree: true, childList: true, characterData: true, attributeFilter: WORDS });
  const canvas = CanvasRenderingContext2D.prototype;
  for (const name of ["fillText", "strokeText", "measureText"]) {
    const own = canvas[name];
    canvas[name] = function (text, ...where) {
      return own.call(this, isComma ? inComma(text) : text, ...where);
    };
  }
  // What leaves the page as a file: a drawing as it is shown, the text of an element as it was made.
  const written = (node) =>
    node.nodeType === Node.TEXT_NODE ? made(node) : Array.from(node.childNodes, written).join("");
  window.decimals = { drawing: (svg) => (isComma ? drawing(svg) : svg), written };
};

/** Shows numbers with a comma from now on, or as they were made; the document's root tells which. */
export const show = (isShown) => {
  follow();
  isComma = isShown;
  document.documentElement.toggleAttribute("data-comma", isComma);
  showAll(document.body);
};
