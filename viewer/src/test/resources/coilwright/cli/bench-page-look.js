(() => {
  const found = { scroll: document.documentElement.scrollWidth, wide: [], small: [], faint: [], nameless: [], texts: 0, targets: 0 };
  const shown = e => e.getClientRects().length > 0 && getComputedStyle(e).visibility !== 'hidden';
  const name = e => e.tagName + '.' + e.className + ' ' + (e.textContent || e.value || '').trim().slice(0, 40);
  const rgb = c => (c.match(/[\d.]+/g) || [0, 0, 0, 0]).map(Number);
  const part = v => { v /= 255; return v <= 0.04045 ? v / 12.92 : Math.pow((v + 0.055) / 1.055, 2.4); };
  const light = c => 0.2126 * part(c[0]) + 0.7152 * part(c[1]) + 0.0722 * part(c[2]);
  const ground = e => {
    for (; e; e = e.parentElement) {
      const c = rgb(getComputedStyle(e).backgroundColor);
      if (c.length < 4 || c[3] > 0) { return c; }
    }
    return [255, 255, 255];
  };
  for (const e of document.body.querySelectorAll('*')) {
    if (!shown(e) || ['SCRIPT', 'OPTION'].includes(e.tagName)) { continue; }
    const inDrawing = e.closest('svg') !== null;
    const box = e.getBoundingClientRect();
    if (!inDrawing && (box.right > 360.5 || box.left < -0.5)) { found.wide.push(name(e)); }
    if (e.matches('a, button, select, input:not([type=checkbox]), textarea, summary, label.tick')) {
      found.targets++;
      if (box.width < 44 || box.height < 44) { found.small.push(name(e) + ' ' + box.width + 'x' + box.height); }
    }
    if (e.matches('button, input, select, textarea')) {
      const labelled = e.getAttribute('aria-label') || (e.labels && e.labels.length > 0) || e.textContent.trim() !== '';
      if (!labelled) { found.nameless.push(name(e)); }
    }
    const own = [...e.childNodes].some(n => n.nodeType === 3 && n.textContent.trim() !== '') || e.matches('input, select');
    if (own && !e.matches('svg title, svg desc, style')) {
      const style = getComputedStyle(e);
      // Words of a drawing stand on white plates, on the paper or on pale bars; brushes have theirs in white.
      const onDark = inDrawing && e.closest('.brush') !== null;
      const ink = rgb(inDrawing ? style.fill : style.color);
      const under = onDark ? rgb(getComputedStyle(e.closest('.brush').querySelector('rect, path, circle')).fill)
        : inDrawing ? [255, 255, 255] : ground(e);
      const a = light(ink), b = light(under);
      const ratio = (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05);
      found.texts++;
      if (ratio < 7) { found.faint.push(name(e) + ' ' + ratio.toFixed(2)); }
    }
  }
  return found;
})()
