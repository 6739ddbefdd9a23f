import { it } from 'vitest';
import { CHROMIUM } from '../../../../../internal/testing/engines/chromium.ts';
import { tellDesk } from '../../../../../internal/testing/engines/desk-story.ts';

it('[ST2704] [ST3703] writes, plays, teaches and prints a lesson in Chromium', () => tellDesk(CHROMIUM));
