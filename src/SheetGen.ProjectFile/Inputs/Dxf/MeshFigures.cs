using SheetGen.Dxf;

namespace SheetGen.ProjectFile.Inputs.Dxf;

/// <summary>The faces of meshes, as the drawing format writes them.</summary>
internal static class MeshFigures
{
    /// <summary>A MESH: its vertices and, where it is not to be smoothed, its faces.</summary>
    public static (IReadOnlyList<Figure> Figures, string? Why) Subdivision(DxfRecord r, Source source)
    {
        double[] x = r.Reals(10), y = r.Reals(20), z = r.Reals(30);
        int count = Math.Min(Math.Min(x.Length, y.Length), Math.Min(z.Length, Math.Max(0, r.Whole(92))));
        if (count < 4)
            return ([], "it has no vertices");
        // A smoothed mesh lies within the hull of its vertices, and nowhere else for sure.
        int[] list = r.Whole(91) > 0 ? [] : [.. r.Groups.SkipWhile(g => g.Code != 93).Skip(1).TakeWhile(g => g.Code == 90).Select(g => (int)(DxfRecord.Number(g.Value) ?? -1))];
        var faces = new List<int[]>();
        for (int i = 0; i < list.Length && list[i] > 0 && i + list[i] < list.Length; i += list[i] + 1)
            faces.Add(list[(i + 1)..(i + 1 + list[i])]);
        Point3[] corners = [.. Enumerable.Range(0, count).Select(i => new Point3(x[i], y[i], z[i]))];
        return ([new Figure(source, FigureKind.Body, []) { Corners = corners, Faces = Good(faces, count) }], null);
    }

    /// <summary>The faces of a polyface mesh: up to four vertices each, counted from 1, a minus for an edge that is not drawn.</summary>
    public static IEnumerable<int[]> FaceRecords(IEnumerable<DxfRecord> records) =>
        records.Select(f => new[] { 71, 72, 73, 74 }.Select(c => Math.Abs(f.Whole(c))).Where(v => v > 0).Select(v => v - 1).ToArray());

    /// <summary>The quadrangles of a mesh of M by N vertices, which may be closed in both directions; none where it is to be smoothed.</summary>
    public static IEnumerable<int[]> Net(DxfRecord r)
    {
        const int ClosedM = 1, ClosedN = 32, Smoothed = 4, Most = 4_000;
        int m = r.Whole(71), n = r.Whole(72), flags = r.Whole(70);
        if (m is < 2 or > Most || n is < 2 or > Most || (flags & Smoothed) != 0)
            yield break;
        for (int i = 0; i < m - ((flags & ClosedM) != 0 ? 0 : 1); i++)
        {
            for (int j = 0; j < n - ((flags & ClosedN) != 0 ? 0 : 1); j++)
                yield return [i * n + j, (i + 1) % m * n + j, (i + 1) % m * n + (j + 1) % n, i * n + (j + 1) % n];
        }
    }

    /// <summary>The faces, or none where one of them names a vertex that is not there.</summary>
    public static IReadOnlyList<int[]> Good(IEnumerable<int[]> faces, int corners)
    {
        int[][] all = [.. faces];
        return all.All(f => f.Length >= 3 && f.All(v => v >= 0 && v < corners)) ? all : [];
    }
}
