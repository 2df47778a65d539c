import { cpus, loadavg } from 'node:os';

/** One line that a program can read: `against` names the plainest alternative, `ratio` is this over that. */
export type Measured = {
  name: string;
  value: number;
  unit: string;
  against?: string;
  ratio?: number;
  n: number;
};

export type Spread = { medianMs: number; p95Ms: number; runs: number };

/** Whatever a run gives is kept alive here, so that no engine leaves the work out. */
let sink: unknown;
export function used(): unknown {
  return sink;
}

/**
 * Time several ways of one job in turn, round by round, so that a busy machine is busy for all of them.
 * @param ways   name to the job; its result is used
 * @param rounds counted rounds, after as many again as warming needs
 */
export function inTurn<Name extends string>(
  ways: Record<Name, () => unknown>,
  rounds = 31,
): Record<Name, Spread> {
  const names = Object.keys(ways) as Name[];
  const times = new Map<Name, number[]>(names.map((name) => [name, []]));
  const warmups = Math.max(3, Math.ceil(rounds / 5));
  for (let round = -warmups; round < rounds; round += 1) {
    for (const name of names) {
      const begun = performance.now();
      sink = ways[name]();
      const took = performance.now() - begun;
      if (round >= 0) times.get(name)?.push(took);
    }
  }
  return Object.fromEntries(names.map((name) => [name, spreadOf(times.get(name) ?? [])])) as Record<
    Name,
    Spread
  >;
}

/** The same for ways that may have to be waited for. */
export async function awaitedInTurn(
  ways: Readonly<Record<string, () => unknown>>,
  rounds: number,
): Promise<Partial<Record<string, Spread>>> {
  const times = new Map<string, number[]>();
  const warmups = Math.max(3, Math.ceil(rounds / 5));
  for (let round = -warmups; round < rounds; round += 1) {
    for (const [name, way] of Object.entries(ways)) {
      const begun = performance.now();
      sink = await way();
      const took = performance.now() - begun;
      if (round >= 0) times.set(name, [...(times.get(name) ?? []), took]);
    }
  }
  return Object.fromEntries([...times].map(([name, each]) => [name, spreadOf(each)]));
}

/** Median and 95th percentile of some times. */
export function spreadOf(timesMs: number[]): Spread {
  const sorted = timesMs.toSorted((a, b) => a - b);
  const at = (share: number) => sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? NaN;
  return { medianMs: at(0.5), p95Ms: at(0.95), runs: sorted.length };
}

/** The same numbers in every run: xorshift, seeded. Values in [0, 1). */
export function seeded(seed = 1): () => number {
  let state = seed | 0 || 1;
  return () => {
    state ^= state << 13;
    state ^= state >>> 17;
    state ^= state << 5;
    return (state >>> 0) / 2 ** 32;
  };
}

/** A line for people and one for programs. */
export function report(words: string, measured: Measured): void {
  console.log(words);
  console.log(JSON.stringify(measured));
}

/** `n` calls took this long: how many a second, in words. */
export function perSecond(n: number, ms: number): string {
  const rate = n / (ms / 1000);
  if (rate >= 1e6) return `${(rate / 1e6).toFixed(rate >= 1e7 ? 0 : 1)} million a second`;
  return rate >= 1e3 ? `${(rate / 1e3).toFixed(0)} thousand a second` : `${rate.toFixed(1)} a second`;
}

/**
 * One function over many inputs, beside the plainest other way to the same answer.
 * @param n     how many calls one run makes
 * @param other undefined where there is none to compare with
 */
export function beside(
  name: string,
  n: number,
  ours: () => unknown,
  other?: { name: string; run: () => unknown },
): void {
  const spreads: Partial<Record<string, Spread>> =
    other === undefined ? inTurn({ ours }) : inTurn({ ours, other: other.run });
  const own = spreads['ours'] ?? spreadOf([]);
  const against = spreads['other'];
  const ratio = against === undefined ? undefined : own.medianMs / against.medianMs;
  report(
    `${name}: ${perSecond(n, own.medianMs)} (median ${own.medianMs.toFixed(2)} ms, p95 ${own.p95Ms.toFixed(2)} ms for ${String(n)})` +
      (other === undefined || ratio === undefined
        ? ''
        : `; ${ratio.toFixed(2)} of the time of ${other.name}`),
    {
      name,
      value: own.medianMs,
      unit: 'ms',
      n,
      ...(other === undefined || ratio === undefined ? {} : { against: other.name, ratio }),
    },
  );
}

/** What the figures were measured on, and how busy it was with other work: above one a core, times are too long. */
export function machineLine(): string {
  const [first] = cpus();
  return `${String(cpus().length)} x ${first?.model.trim() ?? 'unknown processor'}, Node ${process.version}, ${process.platform} ${process.arch}, load ${(loadavg()[0] ?? 0).toFixed(1)}`;
}
