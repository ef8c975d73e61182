'use strict';
// Loads the contract. It needs Go, which knows where the schema lies in which the
// contract states its rules on values.

const { execFileSync } = require('node:child_process');
const path = require('node:path');
const grpc = require('@grpc/grpc-js');
const loader = require('@grpc/proto-loader');

const top = path.join(__dirname, '..', '..');
const download = ['mod', 'download', '-json', 'github.com/bufbuild/protovalidate'];
const rules = JSON.parse(execFileSync('go', download, { cwd: path.join(top, '.ci/tools') }));

const definition = loader.loadSync('footward/v1/check.proto', {
  includeDirs: [path.join(top, 'proto'), path.join(rules.Dir, 'proto/protovalidate')],
  keepCase: true, // names as the contract has them: thickness_mm
  enums: String,
  defaults: true, // what is zero or empty is there, too
});

module.exports = grpc.loadPackageDefinition(definition).footward.v1;
