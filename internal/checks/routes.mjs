/**
 * `docs/routes.md`, generated from the table of routes. With `--write` it is written anew; the check fails where the
 * committed one differs.
 */
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { z } from 'zod';
import { ROOT } from './tree.mjs';

const PAGE = 'docs/routes.md';

const INTRO = `# Routes of the server

Generated from the table in \`packages/routes/src/routes.ts\` by \`node internal/checks/routes.mjs --write\`. Server,
desk and this page follow from that table.

Bodies are JSON in UTF-8, but for files, which are sent as they are. The server answers to its own pages only.`;

/** A schema in a few words: its kind, its range, its fields. */
function shapeOf(schema) {
  if (schema.enum) return schema.enum.map((each) => `\`${each}\``).join(', ');
  if (schema.anyOf) return schema.anyOf.map(shapeOf).join(' or ');
  if (schema.type === 'array') return `list of ${shapeOf(schema.items)}`;
  if (schema.type === 'object') return fieldsOf(schema).join('; ');
  const most = schema.maxLength ? `, at most ${schema.maxLength} characters` : '';
  const kind = { integer: 'whole number', number: 'number', string: 'text', boolean: 'true or false' };
  return `${kind[schema.type] ?? schema.type}${most}`;
}

function fieldsOf({ properties = {} }) {
  return Object.entries(properties).map(([name, field]) => {
    const about = field.description ? ` (${field.description})` : '';
    return `\`${name}\`: ${shapeOf(field)}${about}`;
  });
}

function listed(label, schema) {
  const json = z.toJSONSchema(schema, { io: 'input', unrepresentable: 'any' });
  const items = json.type === 'array' ? json.items : json;
  const fields = fieldsOf(items).map((field) => `  - ${field}`);
  if (fields.length === 0) return [];
  return [`- ${label}${json.type === 'array' ? ', a list; each has' : ''}:`, ...fields];
}

const ANSWERS = {
  events: 'events (WHATWG HTML, Server-sent events), as long as somebody listens',
  file: 'a file, its name in `content-disposition`',
  nothing: 'nothing (204)',
};

function routeLines([name, { method, path, does, params, query, body, answer, refusals }]) {
  const sent = body === 'bytes' ? ['- Body: the file'] : body ? listed('Body', body) : [];
  const answered =
    answer.kind === 'json'
      ? listed(`Answer (${answer.status})`, answer.schema)
      : [`- Answer: ${ANSWERS[answer.kind]}`];
  return [
    `## \`${method} ${path}\``,
    '',
    `${does}. In code: \`${name}\`.`,
    '',
    ...listed('Path', params),
    ...listed('Query', query),
    ...sent,
    ...answered,
    ...(refusals.length > 0 ? [`- Refusals: ${refusals.map((code) => `\`${code}\``).join(', ')}`] : []),
    '',
  ];
}

function refusalRows(refusals, common) {
  return Object.entries(refusals).map(([code, { status, values, meaning }]) => {
    const names = Object.keys(values.def.innerType.shape).map((name) => `\`${name}\``);
    const anywhere = common.includes(code) ? 'any' : '';
    return `| \`${code}\` | ${status} | ${meaning} | ${names.join(', ')} | ${anywhere} |`;
  });
}

async function generate() {
  const index = pathToFileURL(join(ROOT, 'packages/routes/dist/index.js')).href;
  const { COMMON_REFUSALS, REFUSALS, ROUTES } = await import(index);
  const lines = [
    INTRO,
    '',
    ...Object.entries(ROUTES).flatMap(routeLines),
    '## Refusals',
    '',
    'A refusal is `{ code, values }`; who shows it makes the sentence.',
    '',
    '| code | status | meaning | values | routes |',
    '|---|---|---|---|---|',
    ...refusalRows(REFUSALS, COMMON_REFUSALS),
  ];
  return `${lines.join('\n')}\n`;
}

/** The page, where it differs from the table. */
export async function checkRoutes(tree) {
  const text = await generate();
  if (tree.has(PAGE) && tree.read(PAGE) === text) return [];
  return [`${PAGE}: differs from the table of routes; run node internal/checks/routes.mjs --write`];
}

if (process.argv.includes('--write')) writeFileSync(join(ROOT, PAGE), await generate());
