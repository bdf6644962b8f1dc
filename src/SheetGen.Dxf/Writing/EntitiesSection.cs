namespace SheetGen.Dxf;

/// <summary>Writes the section ENTITIES: model space and the first layout.</summary>
internal static class EntitiesSection
{
    internal static void Write(WriteJob job)
    {
        job.Begin("ENTITIES");
        foreach (var space in new[] { job.Plan.Model, job.Plan.Sheets[0] })
            new EntityWriter(job, new(space.Record, space.Sheet is not null)).Space(space);
        job.End();
    }
}
