// Reads a DXF file with the dxf package and prints as JSON what is in it: unit, layers used and defined, layouts, counts, block references.
// usage: node read_dxf.js FILE
const fs = require('fs')
const { parseString } = require('dxf')

const drawing = parseString(fs.readFileSync(process.argv[2], 'utf8'))
const counts = {}
const references = []
// Layouts after the first have their content in blocks of their own.
const others = drawing.blocks.filter(b => /^\*Paper_Space\d/i.test(b.name)).flatMap(b => b.entities.map(e => ({ ...e, paperSpace: 1 })))
const entities = [...drawing.entities, ...others]
for (const entity of entities) {
  const kind = (entity.paperSpace ? 'paper ' : 'model ') + entity.type
  counts[kind] = (counts[kind] || 0) + 1
  // An attribute follows the block reference that it belongs to.
  if (entity.type === 'INSERT') {
    references.push({ block: entity.block, layer: entity.layer, x: entity.x, y: entity.y, paper: Boolean(entity.paperSpace), attributes: {} })
  } else if (entity.type === 'ATTRIB') {
    references[references.length - 1].attributes[entity.tag] = (entity.text && entity.text.string) || ''
  }
}
console.log(JSON.stringify({
  unit: drawing.header.insUnits,
  layers: Object.keys(drawing.tables.layers).sort(),
  used: [...new Set(entities.map(e => e.layer))].sort(),
  layouts: drawing.objects.layouts.map(l => l.name),
  blocks: drawing.blocks.map(b => b.name).sort(),
  counts,
  references
}))
