using PlankFit.Geometry.Cloth;
using PlankFit.Geometry.Surfaces;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Laying;
using PlankFit.Planking.Regions;

namespace PlankFit.Planking.Sheathing;

/// <summary>The face that a layer of cloth lies on, one side, in the starboard frame: what the skin below it shows.</summary>
/// <param name="FaceMm">The face's place, from the table's surface along the outward normal, mm.</param>
internal sealed record ClothFace(
    HullSurface Hull,
    LayerRegion Region,
    KeelSideFace KeelSide,
    double FaceMm
)
{
    /// <summary>The keel's side is followed so far past the bottom's ends: a net goes a few meshes past them.</summary>
    private const double PastMm = 250;

    public static ClothFace Of(Planked planked, string layer, Side side)
    {
        PlankingJob job = planked.Job;
        StackedLayer stacked = Stack.Of(job).Layers.First(l => l.Spec.Name == layer);
        PlankLayerSpec below =
            job.Layers.TakeWhile(l => l.Name != layer).OfType<PlankLayerSpec>().LastOrDefault()
            ?? job.Layers.OfType<PlankLayerSpec>().First();
        HullSurface hull = planked.HullOf(side);
        KeelSideFace keelSide = planked.KeelOf(side).SideOf(below);
        return new(
            hull,
            LayerRegion.On(hull.Surface, stacked.InnerMm, keelSide, PastMm, job.Hull.Panel),
            keelSide,
            stacked.InnerMm
        );
    }

    public ClothGround Ground => new(Region.Surface, at => -Region.Room(at));

    public double MiddleU => (Region.UFrom + Region.UTo) / 2;

    /// <summary>The place at a part of the girth from keel to chine, at one u.</summary>
    public Uv AtPart(double u, double part)
    {
        const int chords = 48;
        double low = Region.LowerV(u),
            high = Region.UpperV(u);
        double[] run = new double[chords + 1];
        for (int i = 1; i <= chords; i++)
        {
            run[i] =
                run[i - 1]
                + Region
                    .PointAt(new(u, low + ((high - low) * (i - 1) / chords)))
                    .ChordTo(Region.PointAt(new(u, low + ((high - low) * i / chords))));
        }

        double wanted = part * run[^1];
        int at = Math.Clamp(Array.FindLastIndex(run, r => r <= wanted), 0, chords - 1);
        double within = run[at + 1] > run[at] ? (wanted - run[at]) / (run[at + 1] - run[at]) : 0;
        return new(u, low + ((high - low) * (at + within) / chords));
    }
}
