using SheetGen.Model.Geometry;

namespace SheetGen.Exchange.Scene;

/// <summary>Collects pieces into one mesh.</summary>
internal sealed class MeshBuilder
{
    private readonly List<Vector3D> _points = [];
    private readonly List<(int, int, int)> _triangles = [];
    private bool _closed = true;

    public bool IsEmpty => _triangles.Count == 0;

    public Mesh ToMesh() => new(_points, _triangles, _closed);

    /// <summary>A flat convex polygon without thickness.</summary>
    public void AddSurface(IReadOnlyList<Vector3D> corners)
    {
        int first = _points.Count;
        _points.AddRange(corners);
        for (int i = 2; i < corners.Count; i++)
            AddTriangle(first, first + i - 1, first + i);
        _closed = false;
    }

    /// <summary>A body between two outlines of as many corners, one the other's image; each is convex and flat or nearly so.</summary>
    public void AddPrism(IReadOnlyList<Vector3D> front, IReadOnlyList<Vector3D> back)
    {
        int first = _points.Count, count = front.Count, from = _triangles.Count;
        _points.AddRange(front);
        _points.AddRange(back);
        for (int i = 2; i < count; i++)
        {
            AddTriangle(first, first + i - 1, first + i);
            AddTriangle(first + count, first + count + i, first + count + i - 1);
        }
        for (int i = 0; i < count; i++)
        {
            int next = (i + 1) % count;
            AddTriangle(first + i, first + count + i, first + next);
            AddTriangle(first + next, first + count + i, first + count + next);
        }
        if (Volume(from, first) < 0)
        {
            for (int i = from; i < _triangles.Count; i++)
                _triangles[i] = (_triangles[i].Item1, _triangles[i].Item3, _triangles[i].Item2);
        }
    }

    private void AddTriangle(int a, int b, int c)
    {
        if (_points[a] != _points[b] && _points[b] != _points[c] && _points[c] != _points[a])
            _triangles.Add((a, b, c));
    }

    /// <summary>Six times the volume that the triangles from one on enclose, positive where they are counter-clockwise from outside (x east, y north).</summary>
    private double Volume(int from, int anchor)
    {
        double sum = 0;
        foreach ((int a, int b, int c) in _triangles.Skip(from))
        {
            Vector3D p = _points[a] - _points[anchor], q = _points[b] - _points[anchor], r = _points[c] - _points[anchor];
            sum -= p.Dot(q.Cross(r)); // (N, E, Z) is left-handed, (E, N, Z) right-handed.
        }
        return sum;
    }
}
