// Every line of text that is shown, with its box and that of what it stands in, in pixels from the page's upper left corner.
(() => {
  const lines = [], ranges = document.createRange();
  const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  const block = element => {
    while (getComputedStyle(element).display.startsWith("inline")) element = element.parentElement;
    return element.getBoundingClientRect();
  };
  const box = rect => [rect.left + scrollX, rect.top + scrollY, rect.right + scrollX, rect.bottom + scrollY];
  while (walker.nextNode()) {
    const node = walker.currentNode, parent = node.parentElement;
    if (!node.textContent.trim() || parent.closest("title, desc, style, script")) continue;
    const picture = parent.closest("svg");
    if (picture) {
      const shown = picture.parentElement.getBoundingClientRect(), text = parent.getBoundingClientRect();
      if (text.bottom > shown.bottom || text.right > shown.right) continue; // only there once it is scrolled to
      lines.push([node.textContent, box(parent.getBoundingClientRect()), box(picture.getBoundingClientRect())]);
      continue;
    }
    ranges.selectNodeContents(node);
    const around = box(block(parent));
    for (const rect of ranges.getClientRects())
      if (rect.width > 1) lines.push([node.textContent.trim().slice(0, 60), box(rect), around]);
  }
  return lines;
})()
