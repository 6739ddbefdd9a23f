import { it } from 'vitest';
import { tellDesk } from '../../../../../internal/testing/engines/desk-story.ts';
import { FIREFOX } from '../../../../../internal/testing/engines/firefox.ts';

it('[ST2704] [ST3703] writes, plays, teaches and prints a lesson in Firefox', () => tellDesk(FIREFOX));
