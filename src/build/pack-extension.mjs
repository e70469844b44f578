/**
 * Packs src/editors/vscode with the language server into dist/gaugeleaf-VERSION.vsix, which an editor
 * installs from the file. Needs no network. Run by `npm run extension`, after a build.
 */
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { build } from 'esbuild';
import { strToU8, zipSync } from 'fflate';
import { forNode } from './for-node.mjs';
import { notices } from './notices.mjs';
import { pastDoors } from './past-doors.mjs';

const folder = 'src/editors/vscode';

/** Writes the file for the project at `root`, and returns its path. The same sources give the same bytes. */
export async function packExtension(root, out = join(root, 'dist')) {
  const read = (name) => readFileSync(join(root, name), 'utf8');
  const { version } = JSON.parse(read('package.json'));
  const manifest = { ...JSON.parse(read(`${folder}/package.json`)), version };
  const extension = await bundled(root, {
    entryPoints: { extension: `${folder}/extension.ts` },
    outExtension: { '.js': '.cjs' },
    format: 'cjs',
    external: ['vscode'],
  });
  const server = await bundled(root, {
    ...forNode,
    entryPoints: { server: `${folder}/server.ts` },
    outExtension: { '.js': '.mjs' },
    plugins: [pastDoors()],
  });
  const inputs = [...extension.inputs, ...server.inputs];
  const files = {
    '[Content_Types].xml': contentTypes,
    'extension.vsixmanifest': vsixManifest(manifest),
    'extension/package.json': `${JSON.stringify(manifest, null, 2)}\n`,
    'extension/README.md': read(`${folder}/README.md`),
    'extension/CHANGELOG.md': read('CHANGELOG.md'),
    'extension/LICENSE.txt': read('LICENSE'),
    'extension/third-party-notices.txt': notices(root, inputs),
    'extension/schemas/edition.schema.json': read('schemas/edition.schema.json'),
    'extension/schemas/kind.schema.json': read('schemas/kind.schema.json'),
    'extension/extension.cjs': extension.text,
    'extension/server.mjs': server.text,
  };
  const packed = Object.fromEntries(
    // No clock: the oldest day that a zip file can state.
    Object.entries(files).map(([name, text]) => [name, [strToU8(text), { mtime: '1980-01-02' }]]),
  );
  mkdirSync(out, { recursive: true });
  const path = join(out, `gaugeleaf-${version}.vsix`);
  writeFileSync(path, zipSync(packed, { level: 9 }));
  return path;
}

async function bundled(root, options) {
  const { outputFiles, metafile } = await build({
    absWorkingDir: root,
    outdir: 'dist',
    bundle: true,
    write: false,
    metafile: true,
    platform: 'node',
    target: 'node20',
    minify: true,
    legalComments: 'none',
    logLevel: 'warning',
    logOverride: { 'unsupported-require-call': 'silent' },
    ...options,
  });
  return { text: outputFiles[0].text, inputs: Object.keys(metafile.inputs) };
}

const contentTypes = `<?xml version="1.0" encoding="utf-8"?>
<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types">
  <Default Extension="json" ContentType="application/json" />
  <Default Extension="vsixmanifest" ContentType="text/xml" />
  <Default Extension="md" ContentType="text/markdown" />
  <Default Extension="txt" ContentType="text/plain" />
  <Default Extension="cjs" ContentType="application/javascript" />
  <Default Extension="mjs" ContentType="application/javascript" />
</Types>
`;

function vsixManifest({ name, publisher, version, displayName, description, engines, categories }) {
  const xml = (text) => text.replace(/[&<>"]/g, (sign) => `&#${sign.charCodeAt(0)};`);
  return `<?xml version="1.0" encoding="utf-8"?>
<PackageManifest Version="2.0.0" xmlns="http://schemas.microsoft.com/developer/vsx-schema/2011">
  <Metadata>
    <Identity Language="en-US" Id="${xml(name)}" Version="${xml(version)}" Publisher="${xml(publisher)}" />
    <DisplayName>${xml(displayName)}</DisplayName>
    <Description xml:space="preserve">${xml(description)}</Description>
    <Categories>${xml(categories.join(','))}</Categories>
    <License>extension/LICENSE.txt</License>
    <Properties>
      <Property Id="Microsoft.VisualStudio.Code.Engine" Value="${xml(engines.vscode)}" />
      <Property Id="Microsoft.VisualStudio.Code.ExtensionKind" Value="workspace" />
    </Properties>
  </Metadata>
  <Installation>
    <InstallationTarget Id="Microsoft.VisualStudio.Code" />
  </Installation>
  <Dependencies />
  <Assets>
    <Asset Type="Microsoft.VisualStudio.Code.Manifest" Path="extension/package.json" Addressable="true" />
    <Asset Type="Microsoft.VisualStudio.Services.Content.Details" Path="extension/README.md" Addressable="true" />
    <Asset Type="Microsoft.VisualStudio.Services.Content.Changelog" Path="extension/CHANGELOG.md" Addressable="true" />
    <Asset Type="Microsoft.VisualStudio.Services.Content.License" Path="extension/LICENSE.txt" Addressable="true" />
  </Assets>
</PackageManifest>
`;
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) {
  const path = await packExtension(resolve(fileURLToPath(import.meta.url), '..', '..', '..'));
  console.log(path);
}
