using PlankFit.Geometry.Cloth;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Sheathing;

namespace PlankFit.Tests.Planking.Sheathing;

/// <summary>At which angles threads come to chine and transom, against the threads as they lie in space.</summary>
public sealed class ThreadAngleTests
{
    /// <summary>Each mesh's own threads, by the directions from its neighbours' middles, against the edge's on the hull.</summary>
    [Theory]
    [InlineData(PanelEdge.Upper)]
    [InlineData(PanelEdge.Transom)]
    public void TheyAreThoseOfTheThreadsInSpace(PanelEdge edge)
    {
        SheathedSide side = SheathedJobs.Pressed.Sheathing!.Layers.Single().Sides.Single();
        (ThreadAngles first, ThreadAngles second) = ThreadAngles.Of(side, edge)!.Value;
        FlatEdge line = side.Edges.Of(edge)!;
        int checkedPlaces = 0;
        double least = 90,
            most = 0;
        for (int i = 2; i + 3 < line.Flat.Length; i++)
        {
            Vec2 at = 0.5 * (line.Flat[i] + line.Flat[i + 1]);
            Vec3 along = (line.OnHull[i + 1] - line.OnHull[i]).Unit();
            Vec2 step = side.Net.MeshMm * side.Net.Weave.First;
            ClothMesh here = Nearest(side, at);
            // At the cloth's end the mesh before.
            ClothMesh next = new[] { step, -1 * step }
                .Select(s => (Mesh: Nearest(side, here.Middle + s), At: here.Middle + s))
                .MinBy(n => n.Mesh.Middle.ChordTo(n.At))
                .Mesh;
            if (
                here.Middle.ChordTo(at) > 2 * side.Net.MeshMm
                || Math.Abs(next.Middle.ChordTo(here.Middle) - side.Net.MeshMm) > 1e-6
            )
            {
                continue;
            }

            Vec3 thread = (next.P - here.P).Unit();
            double degrees = Math.Acos(Math.Abs(thread.Dot(along))) * 180 / Math.PI;
            least = Math.Min(least, degrees);
            most = Math.Max(most, degrees);
            checkedPlaces++;
        }

        Assert.True(checkedPlaces > 10);
        Assert.Equal(first.Least, least, 1.5);
        Assert.Equal(first.Most, most, 1.5);
        // So much that the other sign would be seen.
        Assert.True(side.MostShear > 8);
    }

    private static ClothMesh Nearest(SheathedSide side, Vec2 at) =>
        side.Net.Meshes.MinBy(m => m.Middle.ChordTo(at));
}
