import { it } from 'vitest';
import { tellDesk } from '../../../../../internal/testing/engines/desk-story.ts';
import { WEBKIT } from '../../../../../internal/testing/engines/webkit.ts';

it('[ST2704] [ST3703] writes, plays, teaches and prints a lesson in WebKit', () => tellDesk(WEBKIT));
