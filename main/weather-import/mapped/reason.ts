/** One thing that was proposed, and from what. What is not sure has to be looked at by the person. */
export interface Reason {
  about: string;
  why: string;
  sure: boolean;
}
