/** The rule of rooms: what imports what, what knows which machine, what declares what. */
import { checkCycles } from './cycles.mjs';
import { checkEdges } from './edges.mjs';
import { checkPlatform } from './platform.mjs';
import { checkTable } from './table.mjs';
import { checkWorkspaces } from './workspaces.mjs';

/** Every fault of the rooms of a tree. */
export function checkRooms(tree) {
  return [checkWorkspaces, checkEdges, checkPlatform, checkCycles, checkTable].flatMap((check) =>
    check(tree),
  );
}
