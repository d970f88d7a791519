using PlankFit.Geometry.Cloth;
using PlankFit.Geometry.Primitives;
using PlankFit.Geometry.Surfaces;

namespace PlankFit.Planking.Sheathing;

/// <summary>A layer of cloth as it lies on one side, in the starboard frame: p grows aft along the roll, q outboard across it.</summary>
/// <param name="First">Where the roll was laid first, as it was chosen.</param>
/// <param name="Line">The same as a line on the face; of a cloth pinned at a point its first thread.</param>
internal sealed record DrapedCloth(ClothNet Net, FirstLine First, LaidLine Line)
{
    /// <summary>Of all its meshes on the bottom, the greatest shear either way, degrees.</summary>
    public double MostShear =>
        Net.OnGround.Select(m => Math.Abs(m.ShearDegrees)).DefaultIfEmpty().Max();

    /// <summary>The flat places of places of the face, each looked for from the one before; null where the net does not reach one of them.</summary>
    public Vec2[]? Flat(IReadOnlyList<Uv> places)
    {
        var flat = new Vec2[places.Count];
        Vec2? near = null;
        for (int i = 0; i < places.Count; i++)
        {
            if (Net.FlatOf(places[i], near) is not { } found)
            {
                return null;
            }

            near = flat[i] = found;
        }

        return flat;
    }
}
