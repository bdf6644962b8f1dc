using System.Numerics;
using SharpGLTF.Schema2;
using SheetGen.Exchange.Ifc;
using SheetGen.Exchange.Scene;
using SheetGen.Model.Geometry;

namespace SheetGen.Exchange.Gltf;

/// <summary>Bodies as nodes with meshes. All cylinders of a colour share one mesh of radius and height 1, turned and stretched by its nodes.</summary>
internal sealed class GltfShapes(ModelRoot model, double lowest, double metres)
{
    private const int Sides = 16;

    private readonly Dictionary<IfcColour, Material> _materials = [];
    private readonly Dictionary<IfcColour, SharpGLTF.Schema2.Mesh> _cylinders = [];

    public Node Add(Node parent, string name, IReadOnlyList<Body> bodies, IfcColour colour)
    {
        IReadOnlyList<Body> simple = [.. bodies.SelectMany(Simple)];
        if (simple.Count == 1)
            return One(parent, name, simple[0], colour);
        Node node = parent.CreateNode(name);
        for (int i = 0; i < simple.Count; i++)
            One(node, FormattableString.Invariant($"{name} {i + 1}"), simple[i], colour);
        return node;
    }

    private static IEnumerable<Body> Simple(Body body) => body is Tube tube
        ? tube.Points.Zip(tube.Points.Skip(1), (a, b) => new Cylinder(a, b, tube.Radius))
        : [body];

    private Node One(Node parent, string name, Body body, IfcColour colour)
    {
        Node node = parent.CreateNode(name);
        switch (body)
        {
            case Cylinder cylinder:
                (Vector3 start, Vector3 end) = (At(cylinder.Start), At(cylinder.End));
                float radius = (float)(cylinder.Radius * metres);
                node.LocalTransform = new SharpGLTF.Transforms.AffineTransform(
                    new Vector3(radius, (float)((cylinder.End - cylinder.Start).Length * metres), radius), FromUp(Vector3.Normalize(end - start)), start);
                node.Mesh = CylinderOf(colour);
                break;
            case Scene.Mesh mesh:
                node.Mesh = MeshOf(name, mesh, colour);
                break;
        }
        return node;
    }

    /// <summary>From northing, easting, elevation to east, up, south in metres.</summary>
    private Vector3 At(Vector3D p) => new((float)(p.E * metres), (float)((p.Z - lowest) * metres), (float)(-p.N * metres));

    /// <summary>The shortest turn of the upward axis to a direction.</summary>
    private static Quaternion FromUp(Vector3 direction)
    {
        if (direction.Y < -0.999999f)
            return new Quaternion(1, 0, 0, 0);
        Vector3 axis = Vector3.Cross(Vector3.UnitY, direction);
        return Quaternion.Normalize(new Quaternion(axis, 1 + direction.Y));
    }

    private SharpGLTF.Schema2.Mesh CylinderOf(IfcColour colour)
    {
        if (_cylinders.TryGetValue(colour, out SharpGLTF.Schema2.Mesh? known))
            return known;
        var points = new List<Vector3>();
        var normals = new List<Vector3>();
        var indices = new List<uint>();
        for (int i = 0; i < Sides; i++)
        {
            Vector3 a = Round(i), b = Round(i + 1), up = Vector3.UnitY;
            Quad(a, b, b + up, a + up, [a, b, b, a]);
            Triangle(Vector3.Zero, a, b, -up);
            Triangle(up, b + up, a + up, up);
        }
        return _cylinders[colour] = Create("cylinder", points, normals, indices, colour);

        static Vector3 Round(int i) => new((float)Math.Cos(-2 * Math.PI * i / Sides), 0, (float)Math.Sin(-2 * Math.PI * i / Sides));

        void Quad(Vector3 a, Vector3 b, Vector3 c, Vector3 d, Vector3[] outward)
        {
            uint first = (uint)points.Count;
            points.AddRange([a, b, c, d]);
            normals.AddRange(outward);
            indices.AddRange([first, first + 1, first + 2, first, first + 2, first + 3]);
        }

        void Triangle(Vector3 a, Vector3 b, Vector3 c, Vector3 outward)
        {
            uint first = (uint)points.Count;
            points.AddRange([a, b, c]);
            normals.AddRange([outward, outward, outward]);
            if (Vector3.Dot(Vector3.Cross(b - a, c - a), outward) > 0)
                indices.AddRange([first, first + 1, first + 2]);
            else
                indices.AddRange([first, first + 2, first + 1]);
        }
    }

    /// <summary>Each triangle with points of its own, so that edges look sharp.</summary>
    private SharpGLTF.Schema2.Mesh MeshOf(string name, Scene.Mesh mesh, IfcColour colour)
    {
        var points = new List<Vector3>();
        var normals = new List<Vector3>();
        var indices = new List<uint>();
        foreach ((int a, int b, int c) in mesh.Triangles)
        {
            Vector3D p = mesh.Points[a], q = mesh.Points[b] - p, r = mesh.Points[c] - p;
            Vector3D turned = r.Cross(q); // (N, E, Z) is left-handed.
            if (turned.Length < 1e-12)
                continue;
            Vector3D outward = turned * (1 / turned.Length);
            var normal = Vector3.Normalize(new Vector3((float)outward.E, (float)outward.Z, (float)-outward.N));
            foreach (int corner in new[] { a, b, c })
            {
                indices.Add((uint)points.Count);
                points.Add(At(mesh.Points[corner]));
                normals.Add(normal);
            }
        }
        return Create(name, points, normals, indices, colour);
    }

    private SharpGLTF.Schema2.Mesh Create(string name, List<Vector3> points, List<Vector3> normals, List<uint> indices, IfcColour colour)
    {
        SharpGLTF.Schema2.Mesh mesh = model.CreateMesh(name);
        MeshPrimitive primitive = mesh.CreatePrimitive();
        primitive.DrawPrimitiveType = PrimitiveType.TRIANGLES;
        primitive.Material = MaterialOf(colour);
        primitive.SetVertexAccessor("POSITION", Vectors(points));
        primitive.SetVertexAccessor("NORMAL", Vectors(normals));
        byte[] bytes = new byte[indices.Count * sizeof(uint)];
        for (int i = 0; i < indices.Count; i++)
            BitConverter.TryWriteBytes(bytes.AsSpan(i * sizeof(uint)), indices[i]);
        Accessor accessor = model.CreateAccessor();
        accessor.SetIndexData(model.UseBufferView(bytes, 0, null, 0, BufferMode.ELEMENT_ARRAY_BUFFER), 0, indices.Count, IndexEncodingType.UNSIGNED_INT);
        primitive.SetIndexAccessor(accessor);
        return mesh;
    }

    private Accessor Vectors(List<Vector3> values)
    {
        byte[] bytes = new byte[values.Count * 3 * sizeof(float)];
        for (int i = 0; i < values.Count; i++)
        {
            for (int k = 0; k < 3; k++)
                BitConverter.TryWriteBytes(bytes.AsSpan((i * 3 + k) * sizeof(float)), Finite(values[i][k]));
        }
        Accessor accessor = model.CreateAccessor();
        accessor.SetVertexData(model.UseBufferView(bytes, 0, null, 0, BufferMode.ARRAY_BUFFER), 0, values.Count, new SharpGLTF.Memory.AttributeFormat(DimensionType.VEC3));
        return accessor;
    }

    private static float Finite(float value) => (float)Model.Results.FiniteNumber.Of(value);

    private Material MaterialOf(IfcColour colour)
    {
        if (_materials.TryGetValue(colour, out Material? known))
            return known;
        Material material = model.CreateMaterial(colour.Name);
        material.InitializePBRMetallicRoughness();
        MaterialChannel channel = material.FindChannel("BaseColor")!.Value;
        channel.Color = new Vector4((float)colour.Red, (float)colour.Green, (float)colour.Blue, (float)(1 - colour.Transparency));
        if (colour.Transparency > 0)
            material.Alpha = AlphaMode.BLEND;
        material.DoubleSided = true;
        return _materials[colour] = material;
    }
}
