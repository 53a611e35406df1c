/* The arithmetic of the practice bench: which fault a seed sets, what a probe costs and rules out, what the least-cost way is. It only
   looks up what the handbook reckoned (`data`, the page's JSON in a `template`) and adds whole tenths of minutes; tests hold it to the reckoning.
   No page is touched here: `bench.js` does that. */
(function () {
  "use strict";

  /** 32 bits of a text: FNV-1a (Fowler, Noll, Vo), then the last mixing of MurmurHash3 (Appleby), so that near texts differ in every bit. */
  function hash(text) {
    let bits = 0x811c9dc5;
    for (const byte of new TextEncoder().encode(text)) bits = Math.imul(bits ^ byte, 0x01000193);
    bits = Math.imul(bits ^ (bits >>> 16), 0x85ebca6b);
    bits = Math.imul(bits ^ (bits >>> 13), 0xc2b2ae35);
    return (bits ^ (bits >>> 16)) >>> 0;
  }

  /** A seed as people say it: "k7q" and " K7Q" are the same. */
  const plainSeed = (seed) => String(seed).trim().toUpperCase();

  /** The hypothesis of a seed: that of a card for CARD-3, else each as often as its weight says. */
  function hypothesisOf(data, seed) {
    const card = /^CARD-?(\d+)$/.exec(seed);
    if (card && data.cards[card[1] - 1] !== undefined) return data.cards[card[1] - 1];
    const name = data.guide + "/" + seed;
    // 53 bits: the weights add up to less than 2^50.
    const part = (hash(name + "/1") * 2 ** 21 + (hash(name + "/2") >>> 11)) / 2 ** 53;
    let rest = part * data.hypotheses.reduce((sum, one) => sum + one.weight, 0);
    return Math.max(0, data.hypotheses.findIndex((one) => (rest -= one.weight) < 0));
  }

  /** The fault of a seed, fixed for the whole session: how it answers every probe, and which fault of the circuit it is. */
  function draw(data, seed) {
    const plain = plainSeed(seed);
    const at = hypothesisOf(data, plain);
    const { suspect, answers, faults } = data.hypotheses[at];
    const fault = faults.length ? faults[hash(`${data.guide}/${plain}/fault`) % faults.length] : null;
    return { seed: plain, at, suspect, answers, fault };
  }

  /** What a reading shows: one word, the same each time; null where the circuit does not know what is on the bench. */
  function shows(data, drawn, reading) {
    if (drawn.fault === null) return null;
    const can = data.faults[drawn.fault].shows[reading];
    return can[hash(`${data.guide}/${drawn.seed}/reading/${reading}`) % can.length];
  }

  const begin = (data, drawn) => ({ data, drawn, left: data.hypotheses.map((_, at) => at), open: [], spent: 0, mended: false, path: [] });

  const suspectsOf = (data, left) => [...new Set(left.map((at) => data.hypotheses[at].suspect))].sort((a, b) => a - b);

  /** Whether nothing more need be asked: a trial fix worked, or one remedy serves all that is left. */
  function settled({ data, left, mended }) {
    if (mended) return true;
    const suspects = suspectsOf(data, left);
    if (suspects.length < 2 || data.tell_causes) return suspects.length < 2;
    const remedies = new Set(suspects.map((at) => data.suspects[at].remedy ?? `none ${at}`));
    return remedies.size < 2;
  }

  /** Opens, shuts and takes the time of a probe; tenths of a minute. */
  function work(run, index) {
    const { jobs, probes } = run.data;
    const probe = probes[index];
    const shut = run.open.filter((job) => probe.shut.includes(job)).reverse();
    const still = run.open.filter((job) => !probe.shut.includes(job));
    const opened = probe.open.filter((job) => !still.includes(job));
    run.open = [...still, ...opened];
    const opening = opened.reduce((sum, job) => sum + jobs[job].open, 0);
    const closing = shut.reduce((sum, job) => sum + jobs[job].close, 0);
    return { opened, shut, minutes: probe.minutes + opening + closing };
  }

  /** Keeps what fits; what happened goes on the path. */
  function note(run, step, fits) {
    const before = suspectsOf(run.data, run.left);
    const needless = settled(run);
    const left = run.left.filter(fits);
    const told = left.length < run.left.length;
    run.left = left;
    run.spent += step.minutes;
    const after = suspectsOf(run.data, left);
    run.path.push({ ...step, told, needless, out: before.filter((suspect) => !after.includes(suspect)) });
    return run.path.at(-1);
  }

  /** Does a probe. */
  function probe(run, index) {
    const answer = run.drawn.answers[index];
    const step = { kind: "probe", index, answer, ...work(run, index) };
    const noted = note(run, step, (at) => run.data.hypotheses[at].answers[index] === answer);
    run.mended ||= run.data.probes[index].works === answer;
    return noted;
  }

  /** Takes a reading; null, and no time, where the circuit does not know what is on the bench. */
  function read(run, index) {
    const { data, drawn } = run;
    const answer = shows(data, drawn, index);
    if (answer === null) return null;
    const step = { kind: "reading", index, answer, opened: [], shut: [], minutes: data.readings[index].minutes };
    const can = (fault) => data.faults[fault].shows[index].includes(answer);
    return note(run, step, (at) => data.hypotheses[at].faults.length === 0 || data.hypotheses[at].faults.some(can));
  }

  /** Closing all that is open. */
  const closing = ({ data, open }) => open.reduce((sum, job) => sum + data.jobs[job].close, 0);

  /** The share of each suspect that is left, by its place. */
  function shares({ data, left }) {
    const sums = new Map();
    let all = 0;
    for (const { suspect, weight } of left.map((at) => data.hypotheses[at])) {
      sums.set(suspect, (sums.get(suspect) ?? 0) + weight);
      all += weight;
    }
    return new Map([...sums].map(([suspect, sum]) => [suspect, sum / all]));
  }

  /** The least-cost way to the same fault. */
  function least(data, drawn) {
    const run = begin(data, drawn);
    for (let stop = data.tree[0]; stop.probe !== null; stop = data.tree[stop.next[drawn.answers[stop.probe]]]) probe(run, stop.probe);
    return run;
  }

  /** The probe that the least-cost way would do now, with what is done already; null if none is needed. */
  function next(run) {
    if (settled(run)) return null;
    const done = new Set(run.path.filter((step) => step.kind === "probe").map((step) => step.index));
    let stop = run.data.tree[0];
    while (stop.probe !== null && done.has(stop.probe)) stop = run.data.tree[stop.next[run.drawn.answers[stop.probe]]];
    return stop.probe;
  }

  window.practice = { hash, draw, shows, begin, probe, read, settled, closing, shares, suspectsOf, least, next };
})();
