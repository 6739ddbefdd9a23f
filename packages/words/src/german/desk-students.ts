/** Words that the students’ screen of the desk alone says, in German. */
import { hours, nextLesson, progressPage } from './desk/hours.ts';
import { coachSwitch, journal, keeping } from './desk/keeping.ts';
import { answer, beside, consent, diary, inbox, links, receipt, safe, students } from './desk/students.ts';
import { takes } from './desk/takes.ts';

/** The messages. */
export const studentsMessages = {
  students,
  takes,
  inbox,
  consent,
  answer,
  receipt,
  beside,
  diary,
  hours,
  nextLesson,
  coachSwitch,
  journal,
  keeping,
  progressPage,
  links,
  safe,
} as const;
