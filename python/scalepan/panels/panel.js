// The page's side of a panel: paints the state, and asks Python for each change.
// Texts only ever become text nodes and values of fields. Nothing is fetched.

const BY_NAME = ["figures", "controls"];
const MOST_MOVING = 100; // more lights than that stay still, since moving them would take long
let panels = 0;

function make(tag, attributes = {}, ...inside) {
  const made = document.createElement(tag);
  for (const [name, value] of Object.entries(attributes)) {
    if (value !== undefined && value !== false) made.setAttribute(name, value);
  }
  made.append(...inside);
  return made;
}

function makeButton(text, label, press) {
  const button = make("button", { type: "button", "aria-label": label }, text);
  button.addEventListener("click", press);
  return button;
}

function merged(state, patch) {
  const together = { ...state, ...patch };
  for (const key of BY_NAME) together[key] = { ...state[key], ...patch[key] };
  return together;
}

// Of one input: the field, its buttons, and what was refused.
class Control {
  constructor(name, shown, id, ask) {
    this.name = name;
    this.ask = ask;
    this.id = id;
    this.element = make("div", { class: "control", role: "group", "aria-label": name });
    this.build(shown);
    this.paint(shown);
  }

  build(shown) {
    this.form = Control.formOf(shown);
    this.touched = this.reasoned = false;
    const described = `${this.id}-told ${this.id}-problem`;
    this.told = make("p", { id: `${this.id}-told`, class: "note" });
    this.problem = make("p", { id: `${this.id}-problem`, class: "problem" });
    this.field = make("input", {
      id: this.id,
      type: shown.kind === "yes or no" ? "checkbox" : "text",
      disabled: shown.kind === "nothing" && "",
      dir: "auto",
      autocomplete: "off",
      spellcheck: "false",
      "aria-describedby": described,
    });
    const overrides = shown.formula !== undefined;
    const line = make("div", { class: "line" }, this.field);
    if (shown.steps) {
      line.append(
        makeButton("−", `${this.name}: one less`, () => this.step(-1)),
        makeButton("+", `${this.name}: one more`, () => this.step(1)),
      );
    }
    this.why = overrides && make("input", { id: `${this.id}-why`, type: "text", dir: "auto" });
    if (overrides) {
      const because = make("label", { for: this.why.id }, "because");
      line.append(because, this.why, makeButton("Override", `Override ${this.name}`, () => this.give()));
    }
    if (shown.overridden !== undefined) {
      const release = makeButton("Release", `Release ${this.name}`, () => this.send("release"));
      line.append(release);
    }
    const label = make("label", { for: this.id, class: "name" }, this.name);
    this.element.replaceChildren(label, make("div", {}, line, this.told, this.problem));
    this.listen();
  }

  listen() {
    this.field.addEventListener("input", () => { this.touched = true; });
    this.field.addEventListener("change", () => { if (!this.why) this.give(); });
    for (const field of [this.field, this.why].filter(Boolean)) {
      field.addEventListener("keydown", (event) => this.press(event));
    }
  }

  press(event) {
    event.stopPropagation(); // keys of the notebook are not meant
    if (event.isComposing) return;
    const steps = { ArrowUp: 1, ArrowDown: -1 };
    if (event.key === "Enter") this.give();
    else if (event.key === "Escape") this.forget();
    else if (this.shown.steps && !this.touched && event.key in steps) {
      event.preventDefault();
      this.step(steps[event.key]);
    }
  }

  give() {
    if (!this.touched && !this.why) return;
    this.touched = false;
    const given = this.field.type === "checkbox" ? this.field.checked : this.field.value;
    this.reasoned = true;
    this.send("set", { given, why: this.why ? this.why.value : "" });
  }

  step(by) {
    this.touched = false;
    this.send("step", { by });
  }

  forget() {
    this.touched = false;
    this.fill();
    if (this.shown.problem !== undefined) this.send("forget");
  }

  send(what, more = {}) {
    this.ask({ do: what, cell: this.name, ...more });
  }

  fill() {
    if (this.touched) return;
    const { yes, typed, text } = this.shown;
    this.field.checked = yes === true;
    this.field.value = typed ?? text;
  }

  // What was typed is as good as what is shown, even where that did not change by it.
  settle() {
    this.fill();
    if (this.why && this.reasoned && this.shown.problem === undefined) this.why.value = "";
    this.reasoned = false;
  }

  paint(shown) {
    this.shown = shown;
    if (Control.formOf(shown) !== this.form) {
      const had = this.element.contains(this.element.getRootNode().activeElement);
      this.build(shown);
      if (had) this.field.focus();
    }
    this.fill();
    const { formula, overridden, own, problem, hint } = shown;
    const follows = formula && `= ${formula}`;
    this.told.textContent = overridden === undefined ? (follows ?? "") : `${overridden}; its own: ${own}`;
    this.problem.textContent = problem === undefined ? "" : hint ? `${problem} (${hint})` : problem;
    this.field.setAttribute("aria-invalid", String(problem !== undefined));
  }

  // What a control is built of; another form is built anew.
  static formOf({ kind, steps, formula, overridden }) {
    return [kind, steps, formula !== undefined, overridden !== undefined].join();
  }
}

class Panel {
  constructor(el, ask) {
    this.ask = ask;
    this.exact = false;
    this.root = make("div", { class: "scalepan-panel", role: "group", "aria-label": "Panel" });
    this.id = `scalepan-${(panels += 1)}-${Math.random().toString(36).slice(2)}`;
    el.append(this.root);
  }

  build(state) {
    this.state = state;
    this.controls = new Map();
    this.rows = new Map();
    const heads = ["cell", "figure", "before"];
    const head = heads.map((text) => make("div", { role: "columnheader" }, text));
    const rows = state.cells.map((name) => this.row(name));
    this.undo = makeButton("Undo", "Undo the last change", () => this.ask({ do: "undo" }));
    this.redo = makeButton("Redo", "Make the change again", () => this.ask({ do: "redo" }));
    const exact = makeButton("Exact", "Show exact figures", () => this.showExact(exact));
    exact.setAttribute("aria-pressed", String(this.exact));
    this.said = make("p", { class: "note", role: "status", "aria-live": "polite" });
    this.below = make("div");
    this.root.replaceChildren(
      make("div", { class: "controls" }, ...state.inputs.map((name) => this.control(name))),
      make("div", { class: "line" }, this.undo, this.redo, exact, this.said),
      make(
        "div",
        { class: "figures", role: "table", "aria-label": "Figures", tabindex: "0" },
        make("div", { role: "row", class: "heads" }, ...head),
        ...rows,
      ),
      this.below,
    );
    for (const name of state.cells) this.paintFigure(name, state.figures[name]);
    this.light({}, state.lit);
    this.paintRest(state);
  }

  control(name) {
    const id = `${this.id}-${this.controls.size}`;
    const control = new Control(name, this.state.controls[name], id, this.ask);
    this.controls.set(name, control);
    return control.element;
  }

  row(name) {
    const figure = make("div", { role: "cell", class: "figure", dir: "auto" });
    const before = make("div", { role: "cell", class: "before", dir: "auto" });
    const row = make("div", { role: "row" }, make("div", { role: "rowheader" }, name), figure, before);
    this.rows.set(name, { row, figure, before });
    return row;
  }

  apply(patch) {
    const old = this.state;
    this.state = merged(old, patch);
    for (const [name, figure] of Object.entries(patch.figures ?? {})) this.paintFigure(name, figure);
    for (const [name, shown] of Object.entries(patch.controls ?? {})) {
      this.controls.get(name)?.paint(shown);
    }
    for (const control of this.controls.values()) control.settle();
    if (patch.lit) this.light(old.lit, patch.lit);
    this.paintRest(patch);
  }

  paintFigure(name, { told, exact, failed }) {
    const row = this.rows.get(name);
    if (!row) return; // an input that is not among the cells
    row.figure.textContent = told;
    row.figure.classList.toggle("failed", failed === true);
    row.figure.title = exact === undefined ? "" : `exactly ${exact}`;
    if (exact !== undefined && this.exact) row.figure.append(make("small", {}, ` exactly ${exact}`));
  }

  light(old, lit) {
    const few = Object.keys(lit).length <= MOST_MOVING;
    // Taking turns starts the light anew, without a reflow.
    const beat = !few ? "still" : this.state.edition % 2 ? "odd" : "even";
    for (const name of Object.keys(old)) if (!Object.hasOwn(lit, name)) this.lightOne(name, "");
    for (const [name, was] of Object.entries(lit)) this.lightOne(name, beat, was);
  }

  lightOne(name, beat, was) {
    const text = was ? (was.by ? `${was.was}, ${was.by}` : was.was) : "";
    const row = this.rows.get(name);
    const control = this.controls.get(name);
    if (row) row.before.textContent = text;
    for (const lamp of [row?.row, control?.element]) {
      if (lamp && beat) lamp.dataset.lit = beat;
      else if (lamp) delete lamp.dataset.lit;
    }
  }

  paintRest({ undo, redo, said, to_check: toCheck, cautions }) {
    if (undo !== undefined) this.undo.disabled = !undo;
    if (redo !== undefined) this.redo.disabled = !redo;
    if (said !== undefined) this.said.textContent = said;
    if (toCheck || cautions) {
      this.below.replaceChildren(
        ...Panel.points("To check", this.state.to_check),
        ...Panel.points("Cautions", this.state.cautions, "care"),
      );
    }
  }

  showExact(button) {
    this.exact = !this.exact;
    button.setAttribute("aria-pressed", String(this.exact));
    for (const name of this.state.cells) this.paintFigure(name, this.state.figures[name]);
  }

  static points(title, texts, kind = "") {
    if (!texts?.length) return [];
    const points = texts.map((text) => make("li", { dir: "auto" }, text));
    return [make("section", { class: kind }, make("h4", {}, title), make("ul", {}, ...points))];
  }
}

function render({ model, el }) {
  const panel = new Panel(el, (message) => {
    panel.root.setAttribute("aria-busy", "true");
    model.send(message);
  });
  const show = () => model.send({ do: "show", edition: panel.state.edition });
  const hear = ({ state, patch }) => {
    panel.root.removeAttribute("aria-busy");
    if (state && state.edition !== panel.state.edition) panel.build(state);
    else if (patch && patch.after === panel.state.edition) panel.apply(patch);
    else if (patch && patch.edition !== panel.state.edition) show(); // some were lost
  };
  panel.build(model.get("state"));
  model.on("msg:custom", hear);
  show();
  return () => model.off("msg:custom", hear);
}

export default { render };
