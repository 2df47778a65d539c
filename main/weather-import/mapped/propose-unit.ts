import type { Quantity } from './mapping.ts';

/** The unit text of a name: what stands in brackets or behind the last separator. */
export function unitText(lower: string): string {
  return /[([]([^)\]]*)[)\]]\s*$/.exec(lower)?.[1] ?? lower;
}

/** The unit of a column, by its name, else by its values, with why and how sure. */
export function unitOf(
  quantity: Quantity,
  lower: string,
  values: readonly number[],
  isFahrenheit: boolean,
  isModelExport: boolean,
): { unit: string; why: string; sure: boolean } {
  const said =
    /[([]([^)\]]*)[)\]]\s*$/.exec(lower)?.[1]?.trim() ??
    /_(kt|kn|mph|kmh|ms|inhg|hpa|mb|pa|kpa|c|f|k)$/.exec(lower)?.[1];
  const byName =
    said === undefined ? undefined : namedUnits(quantity)[said.replace('°', '').replace(/^deg ?/, '')];
  if (byName !== undefined) return { unit: byName, why: 'as its name says', sure: true };
  const middle = median(values);
  switch (quantity) {
    case 'temperature':
    case 'dew point':
      if (middle > 200) return { unit: 'K', why: 'by its values', sure: true };
      if (isFahrenheit) return { unit: 'degF', why: 'by values too high for degC', sure: true };
      return { unit: 'degC', why: 'no value in it is too high for that', sure: Math.min(...values) < 0 };
    case 'humidity':
      return { unit: 'percent', why: 'by its name', sure: Math.max(...values) > 1 };
    case 'wind direction':
      return { unit: 'deg', why: 'by its name', sure: true };
    case 'wind speed':
    case 'gust':
      if (isModelExport)
        return { unit: 'km/h', why: 'as that export has it where nothing else is asked for', sure: false };
      return isFahrenheit
        ? { unit: 'mph', why: 'because temperatures are in degF', sure: false }
        : { unit: 'm/s', why: 'because temperatures are in degC', sure: false };
    default:
      if (middle > 20 && middle < 35) return { unit: 'inHg', why: 'by its values', sure: true };
      if (middle > 40_000) return { unit: 'Pa', why: 'by its values', sure: true };
      if (middle > 45 && middle < 115) return { unit: 'kPa', why: 'by its values', sure: true };
      return { unit: 'hPa', why: 'by its values', sure: middle > 800 };
  }
}

function namedUnits(quantity: Quantity): Partial<Record<string, string>> {
  if (quantity === 'temperature' || quantity === 'dew point')
    return { c: 'degC', celsius: 'degC', f: 'degF', fahrenheit: 'degF', k: 'K' };
  if (quantity === 'humidity') return { '%': 'percent', percent: 'percent' };
  if (quantity === 'wind direction') return { '': 'deg', deg: 'deg', degrees: 'deg' };
  if (quantity === 'wind speed' || quantity === 'gust')
    return {
      kt: 'kt',
      kn: 'kt',
      kts: 'kt',
      knots: 'kt',
      mph: 'mph',
      mp: 'mph',
      'mp/h': 'mph',
      kmh: 'km/h',
      'km/h': 'km/h',
      ms: 'm/s',
      'm/s': 'm/s',
    };
  return { hpa: 'hPa', mb: 'hPa', mbar: 'hPa', inhg: 'inHg', pa: 'Pa', kpa: 'kPa', mmhg: 'mmHg' };
}

export function median(values: readonly number[]): number {
  return values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)] ?? NaN;
}
