/** How a host was asked to start; the launcher has checked the flags before. */
export interface HostArguments {
  /** null: the usual place. */
  libraryPath: string | null;
  isDemo: boolean;
  opensWindow: boolean;
}

export function readHostArguments(args: readonly string[]): HostArguments {
  const at = args.indexOf('--library');
  return {
    libraryPath: at === -1 ? null : (args[at + 1] ?? null),
    isDemo: args.includes('--demo'),
    opensWindow: !args.includes('--no-open'),
  };
}
