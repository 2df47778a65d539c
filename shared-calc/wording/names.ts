/** "the left seat": a place of the aeroplane inside a sentence, whatever its first letter is on the list. */
export function thePlace(name: string): string {
  return `the ${lowerFirst(name)}`;
}

/** "the front tank", whether it is called "Front", "front tank" or "Front tank". */
export function theTank(name: string): string {
  return /tank/i.test(name) ? thePlace(name) : `${thePlace(name)} tank`;
}

/** A name inside a sentence; one that is a sign of its own ("A", "IFR kit") stays as it is. */
function lowerFirst(name: string): string {
  return /^[A-Z][a-z]/.test(name) ? name.charAt(0).toLowerCase() + name.slice(1) : name;
}
