// Report types of the Integrated Surface Data and its descendants (ISD documentation, control data section, 42-46).

/** Not observations of the hour: summaries of day and month, sums of rain, river stages, daily co-operative reports, model. */
const notObservations = new Set(['SOD', 'SOM', 'PCP15', 'PCP60', 'SHEF', 'COOPD', 'COOPS', 'BOGUS', 'NSRDB']);
const specials = new Set(['FM-16', 'FM16', 'FM16-SPECI', 'SAOSP']);

/** The sentence for a row that is no observation, or null for one that is. */
export function leftOutAs(reportType: string): string | null {
  const [name = ''] = reportType.trim().split('-');
  if (!notObservations.has(name)) return null;
  if (name === 'SOD') return 'summary of the day, not an observation: left out';
  if (name === 'SOM') return 'summary of the month, not an observation: left out';
  return `${name}, not an observation of the hour: left out`;
}

export function isSpecial(reportType: string): boolean {
  return specials.has(reportType.trim());
}
