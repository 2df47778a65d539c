import { assessLoading, type LoadingResult } from '../loading/assess.ts';
import { caseOf, loadFigures, type LoadingInputs } from '../loading/case-of.ts';
import type { FigureSource } from '../loading/records.ts';
import { reserveOf, type Reserve } from '../loading/reserve.ts';
import { InputProblem, RangeProblem } from '../problem.ts';
import { shownDuration } from '../units/duration-text.ts';
import { listWords } from './list-words.ts';
import { loadingVerdict, type LoadingVerdict } from './loading.ts';
import type { LoadingUnits } from './loading-parts.ts';
import { plain, strong, type Sentence } from './parts.ts';

/** What a person reads about a loading, and the figures behind it. */
export interface LoadingReview {
  verdict: LoadingVerdict['verdict'];
  sentences: readonly Sentence[];
  /** For a list of contents: "inside by 11 mm". */
  inShort: string;
  /** What the verdict rests on that is weak: figures not compared, masses only stated. The weightiest first. */
  restsOn: readonly string[];
  /** null where something has to be entered or mended first. */
  result: LoadingResult | null;
  reserve: Reserve | null;
}

/** The whole answer on a loading as the library keeps it: one for window, sheet and scripts. */
export function loadingReview(inputs: LoadingInputs, units: LoadingUnits): LoadingReview {
  const reserve = reserveOf(inputs.loading);
  const prepared = caseOf(inputs);
  if (!prepared.ready) return withoutVerdict(prepared.missing, inputs, reserve);
  try {
    const result = assessLoading(prepared.aeroplane, prepared.loading);
    const said = loadingVerdict(result, units);
    const restsOn = weakInputs(inputs);
    if (reserve === null || reserve.kept || result.fuelEndsS !== null)
      return { ...said, restsOn, result, reserve };
    return withReserveBroken(said, restsOn, result, reserve, inputs.loading.flight.reserveMin);
  } catch (error) {
    if (!(error instanceof InputProblem || error instanceof RangeProblem)) throw error;
    return withoutVerdict([`${named(error.message, inputs)}.`], inputs, reserve);
  }
}

function withoutVerdict(
  why: readonly string[],
  inputs: LoadingInputs,
  reserve: Reserve | null,
): LoadingReview {
  return {
    verdict: 'not checked',
    sentences: [[strong('No verdict yet.')], ...why.map((sentence) => [plain(sentence)])],
    inShort: 'not checked',
    restsOn: weakInputs(inputs),
    result: null,
    reserve,
  };
}

function withReserveBroken(
  said: LoadingVerdict,
  restsOn: readonly string[],
  result: LoadingResult,
  reserve: Reserve,
  reserveMin: number,
): LoadingReview {
  const kept = shownDuration(reserveMin * 60);
  const sentence: Sentence =
    reserve.landByS < 0
      ? [strong('Reserve not kept'), plain(`: the fuel does not hold a reserve of ${kept} at all.`)]
      : [
          strong('Reserve not kept'),
          plain(`: to keep ${kept}, land at most ${shownDuration(reserve.landByS, 'plan')} after take-off.`),
        ];
  // One strong thing in an answer: a limit that is broken comes first, the reserve otherwise.
  const broken = said.verdict === 'outside';
  return {
    verdict: 'outside',
    sentences: broken
      ? [...said.sentences, sentence.map((part) => plain(part.text))]
      : [sentence, ...said.sentences.map((each) => each.map((part) => plain(part.text)))],
    inShort: broken ? said.inShort : 'reserve not kept',
    restsOn,
    result,
    reserve,
  };
}

function weakInputs({ aircraft, loading, people }: LoadingInputs): string[] {
  const used = new Set(loading.items.map((item) => item.stationId));
  const notCompared = [
    ...aircraft.envelopes.map(({ name, source }) => ({ what: `the envelope ${name}`, source })),
    { what: 'maximum masses and reference lines', source: aircraft.limitsSource },
    ...aircraft.tanks.map(({ name, source }) => ({ what: name, source })),
    ...aircraft.stations.filter(({ id }) => used.has(id)).map(({ name, source }) => ({ what: name, source })),
  ];
  const uncompared = notCompared.filter(({ source }) => isUncompared(source)).map(({ what }) => what);
  const estimated = notCompared.filter(({ source }) => source.from === 'estimated').map(({ what }) => what);
  const stated = loading.items.flatMap((item) => {
    const figures = loadFigures(item, people);
    if (figures === null || figures.known === 'weighed') return [];
    return [`${figures.name}: ${figures.known === 'stated' ? 'stated' : 'a standard figure'}, not weighed`];
  });
  return [
    ...(uncompared.length === 0
      ? []
      : [`Do not rely on this yet: not compared with the manual: ${listWords(uncompared)}.`]),
    ...(estimated.length === 0 ? [] : [`Estimated, not measured: ${listWords(estimated)}.`]),
    ...(stated.length === 0
      ? []
      : [
          `${stated.slice(0, 4).join('; ')}${stated.length > 4 ? `; and ${String(stated.length - 4)} more` : ''}.`,
        ]),
  ];
}

/** A figure of the manual that nobody has held against it; measured and estimated ones have nothing to be held against. */
export function isUncompared(source: FigureSource): boolean {
  return source.from === 'manual' && source.comparedOn === null;
}

/** The calculation speaks of parts by their identifiers; a person knows their names. */
function named(message: string, { aircraft }: LoadingInputs): string {
  return [...aircraft.tanks, ...aircraft.stations, ...aircraft.envelopes, ...aircraft.groups].reduce(
    (text, { id, name }) => text.replaceAll(id, name),
    message,
  );
}
