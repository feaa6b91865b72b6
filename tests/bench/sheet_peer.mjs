// The graphs of the sheet's benchmarks in alien-signals, on doubles; prints JSON.
//
//   node --expose-gc --stack-size=900000 tests/bench/sheet_peer.mjs
//
// A chain of this length is read by a recursion as deep, hence the stack: the limit of the system
// must allow it. Times are nanoseconds: a cell of the chain and of the fan, an edit of the rows.

import { computed, effect, signal } from "alien-signals";

const CELLS = 100_000;
const ROWS = 1000;
const COLUMNS = 10;
const SAMPLES = 15;
const WARM_UP = 5;

let seen = 0;

/** A chain of computed values with one effect at its top. */
function makeChain() {
  const given = signal(0);
  let top = given;
  for (let i = 0; i < CELLS; ++i) {
    const below = top;
    top = computed(() => below() + 1);
    top(); // from the bottom up
  }
  effect(() => {
    seen = top();
  });
  return given;
}

/** One input, read by as many computed values, each with its own effect. */
function makeFan() {
  const given = signal(0);
  for (let i = 0; i < CELLS; ++i) {
    const leaf = computed(() => given() + i);
    effect(() => {
      seen = leaf();
    });
  }
  return given;
}

/** Rows of one given and ten computed values, and the sum of the last ones with one effect. */
function makeRows() {
  const given = [];
  const last = [];
  for (let row = 0; row < ROWS; ++row) {
    given.push(signal(row));
    let cell = given[row];
    for (let column = 0; column < COLUMNS; ++column) {
      const below = cell;
      cell = computed(() => below() + 1);
    }
    last.push(cell);
  }
  const total = computed(() => {
    let sum = 0;
    for (let row = 0; row < ROWS; ++row) sum += last[row]();
    return sum;
  });
  effect(() => {
    seen = total();
  });
  return given;
}

function expectSeen(expected) {
  if (seen !== expected) throw new Error(`${seen} is not ${expected}`);
}

function median(numbers) {
  return numbers.toSorted((a, b) => a - b)[Math.floor(numbers.length / 2)];
}

/** Nanoseconds of the processor, those of the collector too: all runs on one core. */
function cpuTime() {
  const { user, system } = process.cpuUsage();
  return 1000 * (user + system);
}

function heapUsed() {
  globalThis.gc();
  return process.memoryUsage().heapUsed;
}

const before = heapUsed();
const chain = makeChain();
const bytes = (heapUsed() - before) / CELLS;
const fan = makeFan();
const rows = makeRows();

let edits = 0;
const measures = {
  "sheet/chain": {
    edits: 5,
    items: CELLS,
    edit() {
      chain(++edits);
      expectSeen(edits + CELLS);
    },
  },
  "sheet/fan-out": {
    edits: 5,
    items: CELLS,
    edit() {
      fan(++edits);
    },
  },
  "sheet/rows": {
    edits: 2000,
    items: 1,
    edit() {
      rows[edits % ROWS](++edits);
    },
  },
};

const samples = Object.fromEntries(Object.keys(measures).map((name) => [name, []]));
for (let sample = -WARM_UP; sample < SAMPLES; ++sample) {
  for (const [name, { edits: count, items, edit }] of Object.entries(measures)) {
    const start = cpuTime();
    for (let i = 0; i < count; ++i) edit();
    const passed = cpuTime() - start;
    if (sample >= 0) samples[name].push(passed / count / items);
  }
}

const results = Object.entries(samples).map(([name, times]) => [name, median(times)]);
console.log(JSON.stringify({ ...Object.fromEntries(results), "sheet/chain bytes": bytes }));
