import { createHash, randomBytes, timingSafeEqual } from 'node:crypto';

/** Who may talk to the loopback host: one-time codes that are exchanged for a token kept by the page. */
export interface Keys {
  /** A code for one address. It stands on a browser's command line, where others may read it: it works once. */
  newCode(): string;
  /** The token for a code that was not used yet, else null. */
  exchange(code: string): string | null;
  /** A token for a script of the same person, handed over by a private file instead of a code. */
  newToken(): string;
  isToken(token: string): boolean;
}

export function makeKeys(): Keys {
  const codes = new Set<string>();
  // Only digests are kept, and compared in constant time, so that the time of an answer tells nothing.
  const tokenDigests: Buffer[] = [];
  const newSecret = () => randomBytes(24).toString('base64url');
  const newToken = () => {
    const token = newSecret();
    tokenDigests.push(digest(token));
    return token;
  };
  return {
    newCode() {
      const code = newSecret();
      codes.add(code);
      return code;
    },
    exchange: (code) => (codes.delete(code) ? newToken() : null),
    newToken,
    isToken(token) {
      const asked = digest(token);
      return tokenDigests.reduce((found, each) => timingSafeEqual(each, asked) || found, false);
    },
  };
}

function digest(text: string): Buffer {
  return createHash('sha256').update(text).digest();
}
