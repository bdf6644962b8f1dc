namespace SheetGen.ProjectFile.Inputs.Dxf;

/// <summary>Faces and meshes as bodies.</summary>
internal static class Bodies
{
    /// <summary>Faces and meshes that touch are one body.</summary>
    public static IEnumerable<Figure> Joined(IEnumerable<Figure> figures)
    {
        Figure[] all = [.. figures];
        foreach (Figure figure in all.Where(f => f.Kind != FigureKind.Body))
            yield return figure;
        Figure[] bodies = [.. all.Where(f => f.Kind == FigureKind.Body)];
        int[] group = [.. Enumerable.Range(0, bodies.Length)];
        int Root(int i) => group[i] == i ? i : group[i] = Root(group[i]);
        var corners = new Dictionary<(long, long, long), int>();
        for (int i = 0; i < bodies.Length; i++)
        {
            foreach (Point3 p in bodies[i].Corners)
            {
                var key = ((long)Math.Round(p.X * 1e4), (long)Math.Round(p.Y * 1e4), (long)Math.Round(p.Z * 1e4));
                if (corners.TryGetValue(key, out int other))
                    group[Root(i)] = Root(other);
                else
                    corners[key] = i;
            }
        }
        foreach (IGrouping<int, int> body in Enumerable.Range(0, bodies.Length).GroupBy(Root))
        {
            Figure first = bodies[body.First()];
            // Where one of them does not tell its faces, the body's are not known.
            bool told = body.All(i => bodies[i].Faces.Count > 0);
            int before = 0;
            var faces = new List<int[]>();
            foreach (int i in body)
            {
                faces.AddRange(told ? bodies[i].Faces.Select(f => f.Select(v => v + before).ToArray()) : []);
                before += bodies[i].Corners.Count;
            }
            yield return first with
            {
                Source = body.Count() == 1 ? first.Source : first.Source with { Kind = $"body of {body.Count()} {first.Source.Kind}s from" },
                Corners = [.. body.SelectMany(i => bodies[i].Corners)],
                Faces = faces,
            };
        }
    }
}
