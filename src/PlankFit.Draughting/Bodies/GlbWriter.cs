using System.Numerics;
using System.Runtime.InteropServices;
using System.Text.Json.Nodes;
using PlankFit.Geometry.Primitives;
using SharpGLTF.Memory;
using SharpGLTF.Schema2;

namespace PlankFit.Draughting.Bodies;

/// <summary>
/// Bodies as glTF 2.0 in one binary file (GLB): a node a body under its own name, in metres, with what is told of it as the node's extras, a material a kind. The same
/// bodies give the same bytes.
/// </summary>
/// <remarks>Places are of 32 bits, as the format has them: better than 0.001 mm on a hull of 8 m. The format: ISO/IEC 12113:2022.</remarks>
public static class GlbWriter
{
    private const double Metres = 0.001;

    /// <summary>Light to dark and told apart by every eye; kinds beyond them begin anew.</summary>
    private static readonly Vector4[] Colours =
    [
        new(0.72f, 0.56f, 0.27f, 1),
        new(0.23f, 0.28f, 0.08f, 1),
        new(0.90f, 0.84f, 0.64f, 1),
        new(0.08f, 0.17f, 0.08f, 1),
        new(0.48f, 0.40f, 0.12f, 1),
        new(0.01f, 0.07f, 0.07f, 1),
    ];

    /// <param name="turned">From the bodies' own axes to those of the format: y up, z forward, x to port. No mirror.</param>
    /// <param name="told">Of the whole.</param>
    public static void Write(
        Stream stream,
        IReadOnlyList<Body> bodies,
        Func<Vec3, Vec3> turned,
        IReadOnlyList<(string Name, object Value)> told
    )
    {
        var model = ModelRoot.CreateModel();
        model.Asset.Generator = "PlankFit";
        model.Asset.Extras = Extras(told);
        Scene scene = model.UseScene(0);
        Dictionary<string, Material> materials = [];
        foreach (Body body in bodies.Where(b => !b.Triangles.IsEmpty))
        {
            if (!materials.TryGetValue(body.Kind, out Material? material))
            {
                materials[body.Kind] = material = Of(model, body.Kind, materials.Count);
            }

            Node node = scene.CreateNode(body.Name);
            node.Extras = Extras(body.Told);
            node.Mesh = model.CreateMesh(body.Name);
            MeshPrimitive faces = node.Mesh.CreatePrimitive();
            faces.DrawPrimitiveType = PrimitiveType.TRIANGLES;
            faces.Material = material;
            faces.SetVertexAccessor(
                "POSITION",
                Places(model, body.Points.Select(p => Metres * turned(p)))
            );
            faces.SetVertexAccessor("NORMAL", Places(model, body.Normals.Select(turned)));
            byte[] indices = MemoryMarshal.AsBytes(body.Triangles.AsSpan()).ToArray();
            Accessor triangles = model.CreateAccessor();
            triangles.SetIndexData(
                model.UseBufferView(indices, 0, null, 0, BufferMode.ELEMENT_ARRAY_BUFFER),
                0,
                body.Triangles.Length,
                IndexEncodingType.UNSIGNED_INT
            );
            faces.SetIndexAccessor(triangles);
        }

        model.WriteGLB(stream);
    }

    private static Material Of(ModelRoot model, string kind, int place)
    {
        Material material = model.CreateMaterial(kind);
        material.InitializePBRMetallicRoughness();
        MaterialChannel colour = material.FindChannel("BaseColor")!.Value;
        colour.Color = Colours[place % Colours.Length];
        MaterialChannel surface = material.FindChannel("MetallicRoughness")!.Value;
        surface.SetFactor("MetallicFactor", 0);
        surface.SetFactor("RoughnessFactor", 0.8f);
        return material;
    }

    private static Accessor Places(ModelRoot model, IEnumerable<Vec3> places)
    {
        Vector3[] all = [.. places.Select(p => new Vector3((float)p.X, (float)p.Y, (float)p.Z))];
        Accessor accessor = model.CreateAccessor();
        accessor.SetVertexData(
            model.UseBufferView(
                MemoryMarshal.AsBytes(all.AsSpan()).ToArray(),
                0,
                null,
                0,
                BufferMode.ARRAY_BUFFER
            ),
            0,
            all.Length,
            new AttributeFormat(DimensionType.VEC3)
        );
        return accessor;
    }

    private static JsonObject Extras(IReadOnlyList<(string Name, object Value)> told)
    {
        var extras = new JsonObject();
        foreach ((string name, object value) in told)
        {
            extras[name] = value switch
            {
                int number => JsonValue.Create(number),
                double number => JsonValue.Create(number),
                _ => JsonValue.Create(value.ToString()),
            };
        }

        return extras;
    }
}
