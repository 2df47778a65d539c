import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, posix, sep } from 'node:path';
import { fileURLToPath } from 'node:url';
import ts from 'typescript';

export const rootFolder = fileURLToPath(new URL('../../', import.meta.url));

/** A source as the house rules see it: its path from the root, and its script. */
export interface Source {
  path: string;
  text: string;
}

/** One import of a source, by value or by type alone. */
export interface Import {
  /** Path from the root for a file of ours; otherwise the package as written. */
  target: string;
  isOurs: boolean;
  isTypeOnly: boolean;
}

/** Every TypeScript, JavaScript and Svelte file under a folder. */
export function sourcesIn(folder: string): Source[] {
  return readdirSync(join(rootFolder, folder), { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && /\.(ts|mjs|js|svelte)$/.test(entry.name))
    .map((entry) => {
      const full = join(entry.parentPath, entry.name);
      return {
        path: full.slice(rootFolder.length).split(sep).join('/'),
        text: readFileSync(full, 'utf8'),
      };
    });
}

/** The syntax of a source; of a Svelte file, that of its scripts. */
export function parse({ path, text }: Source): ts.SourceFile {
  const script = path.endsWith('.svelte')
    ? [...text.matchAll(/<script[^>]*>([\s\S]*?)<\/script>/g)].map(([, code = '']) => code).join('\n')
    : text;
  return ts.createSourceFile(path, script, ts.ScriptTarget.Latest, true, ts.ScriptKind.TS);
}

/** Static imports, re-exports, import() and import types of a source. */
export function importsOf(source: Source): Import[] {
  const found: Import[] = [];
  const add = (specifier: ts.Expression | undefined, isTypeOnly: boolean) => {
    if (specifier === undefined || !ts.isStringLiteralLike(specifier)) return;
    const isOurs = specifier.text.startsWith('.') || specifier.text.startsWith('/');
    found.push({
      target: isOurs ? posix.normalize(posix.join(dirname(source.path), specifier.text)) : specifier.text,
      isOurs,
      isTypeOnly,
    });
  };
  const visit = (node: ts.Node): void => {
    if (ts.isImportDeclaration(node)) add(node.moduleSpecifier, isTypesAlone(node.importClause));
    else if (ts.isExportDeclaration(node)) add(node.moduleSpecifier, node.isTypeOnly);
    else if (ts.isImportTypeNode(node) && ts.isLiteralTypeNode(node.argument))
      add(node.argument.literal as ts.Expression, true);
    else if (ts.isCallExpression(node) && node.expression.kind === ts.SyntaxKind.ImportKeyword)
      add(node.arguments[0], false);
    else if (
      ts.isCallExpression(node) &&
      ts.isIdentifier(node.expression) &&
      node.expression.text === 'require'
    )
      add(node.arguments[0], false);
    ts.forEachChild(node, visit);
  };
  visit(parse(source));
  return found;
}

/** `import type ...`, or braces in which every name is a type. */
function isTypesAlone(clause: ts.ImportClause | undefined): boolean {
  if (clause === undefined) return false;
  if (clause.phaseModifier === ts.SyntaxKind.TypeKeyword) return true;
  const { name, namedBindings } = clause;
  return (
    name === undefined &&
    namedBindings !== undefined &&
    ts.isNamedImports(namedBindings) &&
    namedBindings.elements.length > 0 &&
    namedBindings.elements.every((element) => element.isTypeOnly)
  );
}
