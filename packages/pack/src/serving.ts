/** What somebody needs who hands packs and files out, without what makes them. */
export { drawCode } from './files/code.ts';
export { FILE_FORMATS, type FileFormat } from './files/formats.data.ts';
export { LINK_WORKER } from './page/app-files.ts';
export { CONTENT_POLICY, policyOf } from './page/content-policy.ts';
export { PACK_FOLDER } from './page/zip.ts';
