import 'fs/promises';
