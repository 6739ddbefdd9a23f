/** What a file exports, and the types of a component's properties, each with its declaration. */

/** @typedef {{ name: string, node: object, statement: object }} Named */

function declared(statement, declaration) {
  if (declaration.type === 'VariableDeclaration')
    return declaration.declarations.map((node) => ({ name: node.id.name, node, statement }));
  return [{ name: declaration.id?.name ?? 'default', node: declaration, statement }];
}

function localName(statement) {
  const declaration = statement.declaration ?? statement;
  return declaration.declarations?.map((each) => each.id.name) ?? [declaration.id?.name];
}

/** Statements of a file by the names that they declare. */
export function localsOf({ program }) {
  return new Map(program.body.flatMap((statement) => localName(statement).map((name) => [name, statement])));
}

function exported(statement, locals) {
  if (statement.type === 'ExportDefaultDeclaration') return declared(statement, statement.declaration);
  if (statement.type !== 'ExportNamedDeclaration' || statement.source) return [];
  if (statement.declaration) return declared(statement, statement.declaration);
  return statement.specifiers.flatMap(({ local }) => {
    const at = locals.get(local.name);
    return at && at.type !== 'ImportDeclaration' ? declared(at, at.declaration ?? at) : [];
  });
}

/** Everything that a file itself declares and exports; what it hands on from elsewhere is documented there. */
export function exportsOf(source) {
  const locals = localsOf(source);
  return source.program.body.flatMap((statement) => exported(statement, locals));
}

function propsName({ node }) {
  const made = node.type === 'VariableDeclarator' ? node.init : node;
  return made?.params?.[0]?.typeAnnotation?.typeAnnotation?.typeName?.name;
}

/** Types of the properties of a file's exported components, as far as the file declares them without exporting them. */
export function propsOf(source) {
  const locals = localsOf(source);
  const names = exportsOf(source)
    .filter(({ name }) => /^[A-Z]/.test(name))
    .map(propsName);
  return [...new Set(names)].flatMap((name) => {
    const statement = locals.get(name);
    return statement?.type.startsWith('TS') ? declared(statement, statement) : [];
  });
}
