/** The suite of the store, run once more in PostgreSQL. */
import { describe } from 'vitest';
import { sharedPostgres } from '../../../test/postgres.ts';
import { backupSuite } from '../../../test/suites/backup.suite.ts';
import { binSuite } from '../../../test/suites/bin.suite.ts';
import { binClockSuite } from '../../../test/suites/bin-clock.suite.ts';
import { everyRouteSuite } from '../../../test/suites/every-route.suite.ts';
import { hoursSuite } from '../../../test/suites/hours.suite.ts';
import { intakeSuite } from '../../../test/suites/intake.suite.ts';
import { keepingSuite } from '../../../test/suites/keeping.suite.ts';
import { lessonsSuite } from '../../../test/suites/lessons.suite.ts';
import { namesInUseSuite } from '../../../test/suites/names-in-use.suite.ts';
import { passkeysSuite } from '../../../test/suites/passkeys.suite.ts';
import { rosterSuite } from '../../../test/suites/roster.suite.ts';
import { seedSuite } from '../../../test/suites/seed.suite.ts';
import { shelfSuite } from '../../../test/suites/shelf.suite.ts';
import { studentsSuite } from '../../../test/suites/students.suite.ts';
import { takesSuite } from '../../../test/suites/takes.suite.ts';
import { teachersSuite } from '../../../test/suites/teachers.suite.ts';
import { workSuite } from '../../../test/suites/work.suite.ts';

const SUITES = [
  ...[
    backupSuite,
    binSuite,
    binClockSuite,
    everyRouteSuite,
    hoursSuite,
    intakeSuite,
    keepingSuite,
    lessonsSuite,
    namesInUseSuite,
  ],
  ...[passkeysSuite, rosterSuite, seedSuite, shelfSuite, studentsSuite],
  ...[takesSuite, teachersSuite, workSuite],
];

describe('in PostgreSQL', () => {
  const postgres = sharedPostgres();
  for (const suite of SUITES) suite(postgres);
});
