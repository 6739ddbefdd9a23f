import { type Exercise, exerciseKey, parseLesson } from '@shedbook/core';
import type { StoredStudent } from '@shedbook/routes';
import { expect, it } from 'vitest';
import { NUMBERED_ANEW } from '../../../../internal/testing/numbered-anew.ts';
import { createLesson, send, startTestServer } from '../../test/temporary.ts';
import { CSV_START, csvLine } from './csv.ts';

const entry = {
  ...{ id: 'phone 1', device: 'phone', startedAt: '2026-11-25T18:30:00+01:00', durationSeconds: 61.4 },
  ...{ exercise: null, form: 'loop', heardBy: 'ear' },
};
const loops = [
  { bpm: 90, verdict: 'clean', faults: [] },
  { bpm: 80, verdict: 'loose', faults: [] },
];

it('[SE1610] writes practice as a table that a spreadsheet reads', async () => {
  const server = await startTestServer();
  const lesson = await createLesson(server, 'title: "Swing, first"\nexercises:\n  - x... x... x... x...\n');
  const { id } = (await send(server, 'POST', '/api/students', { name: '=Kaito' })).body as StoredStudent;
  const { id: other } = (await send(server, 'POST', '/api/students', { name: 'Bram' })).body as StoredStudent;
  const row = (more: object) => JSON.stringify({ ...entry, lesson: lesson.id, loops, ...more });
  const rows = [row({ loops: [] }), row({}), row({ id: 'phone 2' }), '{"removed":"phone 2"}', 'broken'];
  await send(server, 'POST', `/api/students/${id}/log`, { version: 1, rows });
  await send(server, 'POST', `/api/students/${other}/log`, { version: 1, rows: [row({ id: 'tablet 1' })] });
  const linesOf = async (query: string) =>
    (await (await fetch(new URL(`/api/practice.csv?${query}`, server.url))).text()).split('\r\n');
  const lines = await linesOf('language=de');
  expect(lines[0]?.startsWith('Name,Tag,Uhrzeit,Sekunden,Lektion,')).toBe(true);
  const played = '2026-11-25,18:30,61,"Swing, first",,nur der Groove,loop,das Ohr,80,90,2,1,1,0,0';
  // OWASP, CSV Injection: what begins like a formula is text
  expect(lines.slice(1)).toEqual([`'=Kaito,${played}`, `Bram,${played}`, '']);
  expect(await linesOf(`student=${other}`)).toHaveLength(3);
});

it('[SE7008] has the number of each exercise as it stands on the page', async () => {
  const server = await startTestServer();
  const { id: lesson } = await createLesson(server, NUMBERED_ANEW);
  const third = parseLesson(NUMBERED_ANEW, 'anew').lesson?.exercises[3] as Exercise;
  const { id } = (await send(server, 'POST', '/api/students', { name: 'Ada' })).body as StoredStudent;
  const rows = [JSON.stringify({ ...entry, lesson, loops, exercise: exerciseKey(third) })];
  await send(server, 'POST', `/api/students/${id}/log`, { version: 1, rows });
  const table = await (await fetch(new URL('/api/practice.csv', server.url))).text();
  expect(table.split('\r\n')[1]).toContain(',Four limbs,B3,');
});

it('[SE1610] keeps quotes, lines and numbers apart', () => {
  // standard: RFC 4180, section 2: lines end with CRLF; with a comma, a line or a quote in it a cell is quoted, a quote twice
  expect(csvLine(['say "a"', 'two\nlines', 1.5, null, '-3'])).toBe('"say ""a""","two\nlines",1.5,,\'-3\r\n');
  // standard: Unicode, the mark of byte order
  expect(CSV_START.codePointAt(0)).toBe(0xfeff);
});
