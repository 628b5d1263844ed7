import { writeFileSync } from 'node:fs';
import { licencesFile, licencesPage } from './shipped.ts';

writeFileSync(licencesFile, licencesPage());
