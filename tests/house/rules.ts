import ts from 'typescript';
import { importsOf, parse, type Source } from './imports.ts';

/** What shared-calc may use from outside: pure packages that do the same on both sides. */
const purePackages = /^(d3-array|temporal-polyfill(\/.*)?|@photostructure\/tz-lookup)$/;

/** Names through which code meets a clock, a disk, a page, a network or chance. */
const outsideNames = new Set([
  'window',
  'document',
  'navigator',
  'localStorage',
  'sessionStorage',
  'indexedDB',
  'fetch',
  'XMLHttpRequest',
  'WebSocket',
  'process',
  'Buffer',
  'require',
  'globalThis',
  'performance',
  'crypto',
  'setTimeout',
  'setInterval',
  'queueMicrotask',
  'console',
]);

/** What is wrong with the arrows of a source, one sentence a fault. */
export function arrowFaults(source: Source): string[] {
  const from = source.path.split('/')[0] ?? '';
  const faults: string[] = [];
  for (const { target, isOurs, isTypeOnly } of importsOf(source)) {
    const to = target.split('/')[0] ?? '';
    const fault = (why: string) => faults.push(`${source.path} imports ${target}: ${why}`);
    if (from === 'shared-calc') {
      if (isOurs && to !== 'shared-calc') fault('shared-calc imports nothing of ours');
      else if (!isOurs && !purePackages.test(target)) fault('shared-calc imports pure packages alone');
    } else if (from === 'main' && isOurs && to === 'renderer') fault('main never imports the window');
    else if (from === 'renderer') {
      if (isOurs && to === 'main' && !isTypeOnly) fault('the window imports main by types alone');
      else if (!isOurs && /^(node:|electron$|better-sqlite3|zod)/.test(target) && !isTypeOnly)
        fault('the window has no Node, Electron, database or schemas');
    }
    if (isOurs && ['tests', 'fixtures'].includes(to) && !['tests', 'fixtures'].includes(from))
      fault('the program imports no tests');
    if (isOurs && !/\.(ts|mjs|js|svelte|css|json|txt|woff2)(\?\w+)?$/.test(target))
      fault('imports name the file with its ending');
  }
  return faults;
}

/** Uses of a clock, a disk, a page, a network, chance or state of the module in a source of shared-calc. */
export function impurities(source: Source): string[] {
  const faults: string[] = [];
  const file = parse(source);
  const fault = (node: ts.Node, what: string) => {
    const { line } = file.getLineAndCharacterOfPosition(node.getStart());
    faults.push(`${source.path}:${String(line + 1)} ${what}`);
  };
  const visit = (node: ts.Node): void => {
    if (ts.isIdentifier(node) && outsideNames.has(node.text) && isFreeName(node))
      fault(node, `uses ${node.text}`);
    if (ts.isPropertyAccessExpression(node)) {
      const name = `${node.expression.getText()}.${node.name.text}`;
      if (name === 'Math.random' || name === 'Date.now' || name === 'Temporal.Now')
        fault(node, `uses ${name}`);
    }
    if (ts.isElementAccessExpression(node) && node.expression.getText() === 'Math')
      fault(node, 'uses Math[...]');
    if (
      ts.isNewExpression(node) &&
      node.expression.getText() === 'Date' &&
      (node.arguments ?? []).length === 0
    )
      fault(node, 'uses new Date()');
    if (ts.isCallExpression(node) && node.expression.getText() === 'Date') fault(node, 'uses Date()');
    ts.forEachChild(node, visit);
  };
  visit(file);
  for (const statement of file.statements)
    if (ts.isVariableStatement(statement) && (statement.declarationList.flags & ts.NodeFlags.Const) === 0)
      fault(statement, 'keeps state in the module (let or var at the top)');
  return faults;
}

/** Uses of `any` in a source. */
export function anyUses(source: Source): string[] {
  const faults: string[] = [];
  const file = parse(source);
  const visit = (node: ts.Node): void => {
    if (node.kind === ts.SyntaxKind.AnyKeyword) {
      const { line } = file.getLineAndCharacterOfPosition(node.getStart());
      faults.push(`${source.path}:${String(line + 1)} uses any`);
    }
    ts.forEachChild(node, visit);
  };
  visit(file);
  return faults;
}

/** A name that stands for itself: no property, no parameter, no declared name, no key. */
function isFreeName(node: ts.Identifier): boolean {
  const { parent } = node;
  if (ts.isPropertyAccessExpression(parent) && parent.name === node) return false;
  if (ts.isPropertyAssignment(parent) && parent.name === node) return false;
  if (ts.isPropertySignature(parent) || ts.isMethodSignature(parent) || ts.isMethodDeclaration(parent))
    return false;
  if (ts.isPropertyDeclaration(parent) || ts.isBindingElement(parent)) return false;
  if (ts.isQualifiedName(parent) || ts.isTypeReferenceNode(parent)) return false;
  return !(
    (ts.isVariableDeclaration(parent) || ts.isParameter(parent) || ts.isFunctionDeclaration(parent)) &&
    parent.name === node
  );
}
