export { backUp, readJournal, restore } from './backup/by-command.ts';
export { defaultDataDir } from './data-dir.ts';
export { createMakers, type Makers } from './makers.ts';
export { browserCommand, openBrowser } from './open-browser.ts';
export { DEFAULT_PORT, type RunningServer, type StartOptions, setPassphrase, startServer } from './start.ts';
export { examineStore, saveReadable } from './store/examine.ts';
export { inviteTeacher, listTeachers, type TeacherPlace } from './teachers-by-command.ts';
