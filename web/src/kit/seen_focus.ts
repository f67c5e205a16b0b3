/// The focus stays in sight. What arrives a moment later (a list, a verdict, the page going to its
/// top) can move the element that was just reached by a key off the screen or behind a bar; then it is
/// brought back. Only for a moment after the key: whoever scrolls away later wants to.

const k_moment_ms = 2500;
/// As scroll-padding in base.css: what the bars cover.
const k_above_px = 60;
const k_below_px = 84;

export function keepFocusSeen(): void {
  let since = -Infinity;
  const bring = (): void => {
    const e = document.activeElement;
    if (performance.now() - since > k_moment_ms || !(e instanceof HTMLElement) || e === document.body || !e.matches(":focus-visible")) return;
    const box = e.getBoundingClientRect();
    if (box.height === 0 || box.height > innerHeight / 2) return;
    if (box.bottom > innerHeight - k_below_px || box.top < k_above_px) e.scrollIntoView({ block: "nearest" });
  };
  let tab = -Infinity;
  addEventListener("keydown", (e) => { if (e.key === "Tab") tab = performance.now(); }, true);
  addEventListener("focusin", () => { if (performance.now() - tab < 200) since = performance.now(); });
  for (const away of ["wheel", "touchmove", "pointerdown"]) addEventListener(away, () => { since = -Infinity; }, { passive: true });
  addEventListener("scroll", () => requestAnimationFrame(bring), { passive: true });
  new ResizeObserver(bring).observe(document.body);
}
