/** Whether the list of first tasks was put away, kept while the person goes from screen to screen. */
export class FirstTasksList {
  isPutAway = $state(false);

  constructor(isPutAway: boolean) {
    this.isPutAway = isPutAway;
  }
}
