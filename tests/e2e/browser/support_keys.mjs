// A person without a mouse: every helper presses keys only, and looks at each stop of Tab whether
// the eye can see where the keyboard is.

/// What is in focus: its name as a screen reader would say it, and whether a line around it shows.
function stopHere(page) {
  return page.evaluate(() => {
    const e = document.activeElement;
    if (!e || e === document.body || e === document.documentElement) return null;
    const shows = (x) => {
      if (!x) return false;
      const style = getComputedStyle(x);
      return style.outlineStyle !== "none" && Number.parseFloat(style.outlineWidth) >= 2;
    };
    const text = e.getAttribute("aria-label") ?? (e.labels?.length ? [...e.labels].map((l) => l.textContent).join(" ") : e.textContent);
    const box = (e.matches(".option input") ? e.parentElement : e).getBoundingClientRect();
    const middle = { x: box.x + box.width / 2, y: box.y + box.height / 2 };
    const bars = [...document.querySelectorAll(".bottom-bar, .notices .notice")].filter((b) => !b.contains(e) && ["fixed", "sticky"].includes(getComputedStyle(b).position));
    return {
      name: (text ?? "").trim().replace(/\s+/g, " "), tag: e.tagName.toLowerCase(), id: e.id,
      group: e.closest("fieldset[id]")?.id ?? "",
      outlined: shows(e) || shows(e.nextElementSibling) || shows(e.parentElement),
      inView: box.bottom > 0 && box.top < innerHeight && box.right > 0 && box.left < innerWidth,
      covered: bars.some((b) => { const r = b.getBoundingClientRect(); return middle.x > r.left && middle.x < r.right && middle.y > r.top && middle.y < r.bottom; }),
      heading: e.tagName === "H1" || e.id === "main",
    };
  });
}

export class Keys {
  constructor(page) {
    this.page = page;
    this.stops = 0;
  }

  async #look() {
    let stop = await stopHere(this.page);
    // The browser scrolls a moment after it moves the focus, later on a busy machine.
    for (let i = 0; i < 20 && stop && (!stop.inView || stop.covered); i++) {
      await this.page.waitForTimeout(50);
      stop = await stopHere(this.page);
    }
    // A page that goes to its top a moment late leaves the focus below: one step back and forth, as a
    // person does who lost sight of it. Told in the counts, because it should not be needed.
    if (stop && !stop.heading && !stop.inView) {
      this.lost = (this.lost ?? 0) + 1;
      await this.page.keyboard.press("Shift+Tab");
      await this.page.keyboard.press("Tab");
      await this.page.waitForTimeout(300);
      stop = await stopHere(this.page);
    }
    if (!stop || stop.heading) return stop;
    this.stops += 1;
    if (!stop.outlined) throw new Error(`the focus does not show on "${stop.name}" (${stop.tag}#${stop.id}) at ${this.page.url()}`);
    if (!stop.inView) throw new Error(`"${stop.name}" has the focus outside the screen at ${this.page.url()}`);
    if (stop.covered) throw new Error(`"${stop.name}" has the focus behind a bar at ${this.page.url()}`);
    return stop;
  }

  /// Tab until the wanted stop is reached.
  async #until(wanted, what) {
    const seen = [];
    for (let i = 0; i < 260; i++) {
      const stop = await stopHere(this.page);
      if (stop && wanted(stop)) return stop;
      await this.page.keyboard.press("Tab");
      const now = await this.#look();
      if (now) seen.push(now.name.slice(0, 20));
      if (now && wanted(now)) return now;
    }
    throw new Error(`Tab does not reach ${what} at ${this.page.url()}; last stops: ${seen.slice(-8).join(" | ")}`);
  }

  async to(name) {
    const fits = (s) => (name instanceof RegExp ? name.test(s.name) : s.name === name);
    return this.#until((s) => !s.heading && fits(s), String(name));
  }
  async press(name, key = "Enter") {
    await this.to(name);
    await this.page.keyboard.press(key);
  }
  async #field(id) {
    return this.#until((s) => s.id === id || s.group === id, `#${id}`);
  }

  /// Fills described fields by their keys, each by what its kind takes.
  async fill(values) {
    for (const [key, value] of Object.entries(values)) {
      const id = key.startsWith("#") ? key.slice(1) : `f-${key}`;
      await this.page.locator(`#${id}`).waitFor({ state: "attached" });
      const stop = await this.#field(id);
      if (stop.group === id && Array.isArray(value)) await this.#tick(id, value);
      else if (stop.group === id) await this.#choose(value);
      else if (stop.tag === "select") await this.#select(value);
      else {
        await this.page.keyboard.press("Control+A");
        await this.page.keyboard.type(value);
      }
    }
  }
  async #tick(id, names) {
    for (const name of names) {
      await this.#until((s) => s.group === id && s.name.startsWith(name), `the box "${name}"`);
      await this.page.keyboard.press("Space");
    }
  }
  /// A group of buttons, one of which is pressed: the space bar takes one, arrows go on.
  async #choose(value) {
    const now = () => this.page.evaluate(() => (document.activeElement.checked ? document.activeElement.value : ""));
    await this.page.keyboard.press("Space");
    for (let i = 0; i < 12 && (await now()) !== value; i++) {
      await this.page.keyboard.press("ArrowRight");
      await this.#look();
    }
    if ((await now()) !== value) throw new Error(`the arrows do not reach "${value}"`);
  }
  async #select(value) {
    const now = () => this.page.evaluate(() => document.activeElement.value);
    await this.page.keyboard.press("Home");
    for (let i = 0; i < 300 && (await now()) !== value; i++) await this.page.keyboard.press("ArrowDown");
    if ((await now()) !== value) throw new Error(`the arrows do not reach "${value}" in the list`);
  }
}
