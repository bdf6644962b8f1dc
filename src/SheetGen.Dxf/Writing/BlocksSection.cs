namespace SheetGen.Dxf;

/// <summary>Writes the section BLOCKS.</summary>
internal static class BlocksSection
{
    private const int Anonymous = 1, HasAttributes = 2;

    internal static void Write(WriteJob job)
    {
        var plan = job.Plan;
        job.Begin("BLOCKS");
        foreach (var space in plan.Spaces)
        {
            // Model space and the first layout keep their entities in the section ENTITIES.
            var content = space == plan.Model || space == plan.Sheets[0] ? (Action<EntityWriter>?)null : w => w.Space(space);
            Block(job, space.Name, DxfPoint.Origin, 0, new(space.Record, space.Sheet is not null), content);
        }
        foreach (var block in job.Document.Blocks)
        {
            var flags = (block.Name.StartsWith('*') ? Anonymous : 0) + (block.AttributeDefinitions.Any() ? HasAttributes : 0);
            Block(job, block.Name, block.BasePoint, flags, new(plan["BLOCK_RECORD", block.Name], false), w => w.Entities(block.Entities));
        }
        foreach (var planned in plan.DimensionBlocks)
        {
            var picture = DimensionPicture.Of(planned.Dimension, job.Document);
            Block(job, planned.BlockName, DxfPoint.Origin, Anonymous, new(planned.Record, false), w => w.Entities(picture.Entities));
        }
        job.End();
    }

    private static void Block(WriteJob job, string name, DxfPoint basePoint, int flags, Owner owner, Action<EntityWriter>? content)
    {
        var o = job.Out;
        var entities = new EntityWriter(job, owner);
        entities.Begin("BLOCK", "0", "AcDbBlockBegin");
        o.Text(2, name);
        o.Integer(70, flags);
        o.Point(10, basePoint);
        o.Text(3, name);
        o.Coded(1, "");
        content?.Invoke(entities);
        entities.Begin("ENDBLK", "0", "AcDbBlockEnd");
    }
}
