import type { ClimbNumbers } from '../performance/climb-reader.ts';
import type { DistanceFigures } from '../performance/departure-figures.ts';
import type { ObstacleAhead, ObstacleAnswer } from '../performance/obstacle.ts';
import { isAnswered, type FigureKind } from '../performance/figure-kind.ts';
import type { UnitPreferences } from '../units/preferences.ts';
import { shown } from '../units/shown.ts';
import { plain, strong, type Sentence } from './parts.ts';
import { tableNote } from './performance.ts';

export type DepartureUnits = Pick<
  UnitPreferences,
  'mass' | 'altitude' | 'temperature' | 'speed' | 'distance' | 'climbRate' | 'gradient'
>;

/**
 * What a take-off or landing needs of its runway, the verdict first; then what the figure is worth.
 * Distances are rounded up, what is left down.
 * @param runwayWords "runway 24", or "the runway"
 * @example "Take-off over 50 ft needs 520 m of the 1 180 m of runway 24, factor 1.33 included: 660 m are left."
 */
export function distanceSentences(
  figures: DistanceFigures,
  runwayWords: string,
  units: DepartureUnits,
): Sentence[] {
  const sentences = [verdict(figures, runwayWords, units)];
  if (figures.kind === 'edge') sentences.push([plain(edgeWords(figures, units))]);
  if (figures.kind === 'estimate') sentences.push([plain(estimateWords(figures))]);
  const refused = refusalWords(figures, units);
  if (refused !== '') sentences.push([plain(refused)]);
  if (isAnswered(figures.kind) && !figures.isHumidityKnown)
    sentences.push([plain('The dew point is not known: the air is counted as dry, moist air needs more.')]);
  return sentences;
}

/**
 * The climb in one sentence, rounded down.
 * @example "Climb: 620 ft/min, 9.6 % over the ground without counting a headwind."
 */
export function climbSentence(climb: Readonly<ClimbNumbers>, units: DepartureUnits): Sentence {
  if (!isAnswered(climb.kind)) return [plain(`No figure for the climb: ${FIGURE_KIND_WORDS[climb.kind]}.`)];
  const rate = shown(climb.climbRateMs, 'climbRate', units.climbRate, 'available');
  const gradient = isAnswered(climb.gradientKind)
    ? `, ${shown(climb.gradientRatio, 'gradient', units.gradient, 'available')} over the ground without counting a headwind`
    : '; no gradient, since the manual’s climb speed is not entered';
  const worth =
    climb.kind === 'estimate'
      ? ' An estimate, not a figure of the manual.'
      : climb.kind === 'edge'
        ? ' No better than the edge of the table.'
        : '';
  return climb.climbRateMs > 0
    ? [plain('Climb: '), strong(rate), plain(`${gradient}.${worth}`)]
    : [strong('No climb is left'), plain(` by these figures (${rate}).${worth}`)];
}

/**
 * Whether the climb clears an obstacle straight ahead; heights rounded down, what is needed up.
 * @param obstacleWords "the trees"
 * @example "At the trees the aeroplane is 180 ft above the runway: 60 ft above them and the 50 ft wished."
 */
export function obstacleSentence(
  answer: ObstacleAnswer,
  obstacle: ObstacleAhead,
  obstacleWords: string,
  units: DepartureUnits,
): Sentence {
  const height = (valueM: number, question: 'margin' | 'excess' | 'available' | 'plain') =>
    shown(valueM, 'altitude', units.altitude, question);
  if (answer.kind === 'refused')
    return [plain(`No figure for ${obstacleWords}: ${FIGURE_KIND_WORDS[answer.why]}.`)];
  if (answer.kind === 'nearerThan50Ft') {
    const fiftyFt = shown(answer.fiftyFtFromStartM, 'distance', units.distance, 'needed');
    return [
      strong(`No figure for ${obstacleWords}`),
      plain(
        `: 50 ft are reached ${fiftyFt} from the start, behind them, and the manual says nothing of less.`,
      ),
    ];
  }
  const { heightM, marginM, neededGradientRatio, worth } = answer;
  const wished = obstacle.clearanceM === 0 ? '' : ` and the ${height(obstacle.clearanceM, 'plain')} wished`;
  const worthWords =
    worth === 'estimate'
      ? ' An estimate, not a figure of the manual.'
      : worth === 'edge'
        ? ' No better than the edge of the table.'
        : '';
  const there = `At ${obstacleWords} the aeroplane is ${height(heightM, 'available')} above the runway: `;
  if (marginM >= 0)
    return [
      plain(there),
      strong(`${height(marginM, 'margin')} above them${wished}`),
      plain(`.${worthWords}`),
    ];
  const needed = shown(neededGradientRatio, 'gradient', units.gradient, 'needed');
  return [
    plain(there),
    strong(`${height(-marginM, 'excess')} too low for them${wished}`),
    plain(`. A climb of ${needed} would be needed.${worthWords}`),
  ];
}

/** A kind in few words, for lists and tables: "hotter than the table". */
export const FIGURE_KIND_WORDS: Readonly<Record<FigureKind, string>> = {
  table: 'from the manual’s table',
  edge: 'no better than the edge of the table',
  estimate: 'an estimate',
  heavier: 'heavier than the table goes',
  higher: 'higher than the table goes',
  hotter: 'hotter than the table goes',
  moreTailwind: 'more tailwind than the manual answers for',
  blankCell: 'left blank by the manual',
  noRule: 'neither the manual nor a published factor covers it',
  noTable: 'the manual’s table is not entered',
  wouldNotClimb: 'by the estimate it would not climb over 50 ft',
  missingAir: 'temperature, pressure or wind is not known',
};

/** Stands beside every distance. */
export const DISTANCE_CAUTION =
  'The approved flight manual decides. A tired engine, a long or wet surface and another technique need more.';

const PHASE_WORDS = { takeOff: 'Take-off', landing: 'Landing' } as const;

function whatWords({ phase, against }: DistanceFigures): string {
  const over = phase === 'takeOff' ? 'over 50 ft' : 'from 50 ft';
  return `${PHASE_WORDS[phase]} ${against === 'overObstacle' ? over : 'ground roll'}`;
}

function verdict(figures: DistanceFigures, runwayWords: string, units: DepartureUnits): Sentence {
  const distance = (valueM: number, question: 'needed' | 'margin' | 'excess' | 'available') =>
    shown(valueM, 'distance', units.distance, question);
  const { kind, runway, requiredM, marginM, safety } = figures;
  if (!isAnswered(kind))
    return [strong('No figure'), plain(` for ${runwayWords}: ${FIGURE_KIND_WORDS[kind]}.`)];
  const factor =
    safety.factorRatio === 1
      ? 'no safety factor chosen'
      : `factor ${factorText(safety.factorRatio)} included`;
  const there = distance(runway.availableM, 'available');
  const needed = distance(requiredM, 'needed');
  return marginM >= 0
    ? [
        plain(`${whatWords(figures)} needs ${needed} of the ${there} of ${runwayWords}, ${factor}: `),
        strong(`${distance(marginM, 'margin')} ${marginM === 0 ? 'is' : 'are'} left`),
        plain('.'),
      ]
    : [
        plain(`${whatWords(figures)} needs ${needed}, `),
        strong(`${distance(-marginM, 'excess')} more than ${runwayWords} has`),
        plain(
          ` (${there}), ${factor}. Do not ${figures.phase === 'takeOff' ? 'take off' : 'land'} like this.`,
        ),
      ];
}

function factorText(ratio: number): string {
  return String(Math.round(ratio * 1000) / 1000);
}

function edgeWords(figures: DistanceFigures, units: DepartureUnits): string {
  const note = figures.reading === null ? '' : tableNote(figures.reading, units);
  return note === ''
    ? 'No better than this: more headwind blows than the manual’s note counts.'
    : `${note}${warmedWords(figures, units)}`;
}

function estimateWords({ reading }: DistanceFigures): string {
  return reading === null
    ? 'This is an estimate from one sea-level figure, not a figure of the manual.'
    : 'This is an estimate: published factors stand in for what the manual’s table does not say.';
}

/** Where the table says more about the refusal than its kind. */
function refusalWords(figures: DistanceFigures, units: DepartureUnits): string {
  const { kind, reading } = figures;
  if (isAnswered(kind) || reading === null || reading.kind === 'value' || kind === 'missingAir') return '';
  return `${tableNote(reading, units)}${warmedWords(figures, units)}`;
}

/** The table's note names the temperature that was asked of it; humid air was asked as warmer air. */
function warmedWords(
  { temperatureC, tableTemperatureC, reading }: DistanceFigures,
  units: DepartureUnits,
): string {
  const isAboutHeat =
    reading?.kind === 'beyondTable'
      ? reading.axis === 'temperatureC'
      : reading?.kind === 'value' && reading.heldAtEdge.some(({ axis }) => axis === 'temperatureC');
  if (!isAboutHeat || tableTemperatureC - temperatureC < WORTH_SAYING_C) return '';
  const air = shown(temperatureC, 'temperature', units.temperature);
  return ` The air has ${air}; with its vapour it is as thin as dry air so much warmer.`;
}

/** Less would not show in whole degrees. */
const WORTH_SAYING_C = 0.5;
