import { parseSync } from 'vite';
import type { SourceFile } from './source-files.ts';

/** A node of the syntax tree (ESTree with types), read by its field names. */
interface Node {
  readonly type: string;
  readonly [field: string]: unknown;
}

const isNode = (value: unknown): value is Node =>
  typeof value === 'object' && value !== null && 'type' in value;

const nodesIn = (value: unknown): Node[] =>
  Array.isArray(value) ? value.filter(isNode) : isNode(value) ? [value] : [];

const childrenOf = (node: Node): Node[] => Object.values(node).flatMap(nodesIn);

const functionTypes = ['FunctionDeclaration', 'FunctionExpression', 'ArrowFunctionExpression'];
const isFunction = ({ type }: Node): boolean => functionTypes.includes(type);

const wrappers = ['ParenthesizedExpression', 'ChainExpression', 'TSAsExpression'].concat([
  'TSNonNullExpression',
  'TSSatisfiesExpression',
]);

/** The expression without brackets and statements of its type. */
function bare(node: Node): Node {
  const inner = node.expression;
  return wrappers.includes(node.type) && isNode(inner) ? bare(inner) : node;
}

/** The name that a chain of fields and indices begins with; '' where it begins with none. */
function rootOf(node: Node): string {
  const { type, object, name } = bare(node);
  if (type === 'MemberExpression' && isNode(object)) return rootOf(object);
  return type === 'Identifier' ? String(name) : '';
}

/** Names that a pattern, a parameter or a declaration brings into being. */
function namesOf(node: Node): string[] {
  switch (node.type) {
    case 'Identifier':
      return [String(node.name)];
    case 'AssignmentPattern':
      return nodesIn(node.left).flatMap(namesOf);
    case 'Property':
      return nodesIn(node.value).flatMap(namesOf);
    case 'VariableDeclarator':
    case 'FunctionDeclaration':
    case 'ClassDeclaration':
      return nodesIn(node.id).flatMap(namesOf);
    case 'ImportSpecifier':
    case 'ImportDefaultSpecifier':
    case 'ImportNamespaceSpecifier':
      return nodesIn(node.local).flatMap(namesOf);
    case 'ObjectPattern':
    case 'ArrayPattern':
    case 'RestElement':
    case 'VariableDeclaration':
    case 'ExportNamedDeclaration':
    case 'ImportDeclaration':
    case 'TSParameterProperty':
      return childrenOf(node).flatMap(namesOf);
    default:
      return [];
  }
}

/** Names that are a node's own: parameters, what a block declares, the index of a loop. */
const ownNames = (node: Node): string[] =>
  ['params', 'param', 'body', 'init', 'left'].flatMap((field) => {
    const isDeclaring = (child: Node): boolean =>
      field === 'params' || field === 'param' || child.type.endsWith('Declaration');
    return nodesIn(node[field]).filter(isDeclaring).flatMap(namesOf);
  });

/** Calls that change what they are called on, those of the core's own memo among them. */
const changing = [
  'set',
  'add',
  'delete',
  'clear',
  'keep',
  'push',
  'pop',
  'shift',
  'unshift',
].concat(['splice', 'sort', 'reverse', 'fill', 'copyWithin']);

/** What a node changes: the left side of an assignment, the list that is pushed to ... */
function changedBy(node: Node): Node[] {
  const { type, left, argument, operator, callee } = node;
  if (type === 'AssignmentExpression') return nodesIn(left);
  if (type === 'UpdateExpression' || operator === 'delete') return nodesIn(argument);
  const call = isNode(callee) ? bare(callee) : null;
  if (type !== 'CallExpression' || call?.type !== 'MemberExpression') return [];
  const [method = ''] = nodesIn(call.property).map(({ name }) => String(name));
  if (rootOf(call) === 'Object' && method === 'assign') return nodesIn(node.arguments).slice(0, 1);
  return changing.includes(method) ? nodesIn(call.object) : [];
}

/** Inside functions: what changes a thing that outlives the call. `known` are the names of the module. */
function changesInside(node: Node, known: ReadonlySet<string>, inFunction = false): string[] {
  const inside = inFunction || isFunction(node);
  const shadowed = ownNames(node);
  const visible =
    inside && shadowed.length > 0
      ? new Set([...known].filter((name) => !shadowed.includes(name)))
      : known;
  const found = inside
    ? changedBy(node)
        .map(rootOf)
        .filter((name) => visible.has(name))
    : [];
  return [
    ...found.map((name) => `changes ${name}`),
    ...childrenOf(node).flatMap((child) => changesInside(child, visible, inside)),
  ];
}

/** `const x: ReadonlySet<...> = new Set(...)`: nobody can change it by its type. */
function isReadonlyTable({ id, init }: Node): boolean {
  const [value] = nodesIn(init).map(bare);
  const [type] = nodesIn(id).flatMap((one) => nodesIn(one.typeAnnotation));
  const [reference] = type ? nodesIn(type.typeAnnotation) : [];
  const [named] = reference ? nodesIn(reference.typeName) : [];
  return value?.type === 'NewExpression' && /^Readonly(Map|Set)$/.test(String(named?.name));
}

/** What is made while the module loads and can hold state: new objects, answers of `create...` and `memoize...`. */
function madeAtLoad(node: Node): string[] {
  if (isFunction(node)) return [];
  if (node.type === 'PropertyDefinition' && node.static !== true) return [];
  if (node.type === 'VariableDeclarator' && isReadonlyTable(node)) return [];
  const [callee] = nodesIn(node.callee).map(bare);
  const name = callee ? rootOf(callee) : '';
  const isMaker = node.type === 'CallExpression' && /^(create|memoize)[A-Z]/.test(name);
  const isNew = node.type === 'NewExpression' && name !== 'Intl'; // its formatters never change
  const found = isNew ? [`new ${name}`] : isMaker ? [`${name}()`] : [];
  // A function that is called where it stands runs at load.
  const inside = callee && isFunction(callee) ? childrenOf(callee) : [];
  return [...found, ...[...childrenOf(node), ...inside].flatMap(madeAtLoad)];
}

/**
 * What a module keeps between two calls: variables, objects made at load that can change, and changes of
 * what the module declares or imports. Not seen: a list that is changed under another name.
 */
export function moduleState({ path, text }: SourceFile): string[] {
  const { program, errors } = parseSync(path, text);
  if (errors.length > 0) throw new Error(`${path}: ${errors[0]?.message}`);
  const body = nodesIn(program.body);
  const declared = body.flatMap((node) =>
    node.type === 'ExportNamedDeclaration' ? nodesIn(node.declaration) : [node],
  );
  const variables = declared.flatMap((node) =>
    node.type === 'VariableDeclaration' && node.kind !== 'const'
      ? namesOf(node).map((name) => `${node.kind} ${name}`)
      : [],
  );
  const names = new Set([...body.flatMap(namesOf), ...declared.flatMap(namesOf)]);
  return [
    ...variables,
    ...body.flatMap(madeAtLoad),
    ...body.flatMap((node) => changesInside(node, names)),
  ].map((fault) => `${path}: ${fault}`);
}
