using System.Collections.Immutable;
using PlankFit.Geometry.Development;
using PlankFit.Geometry.Primitives;
using PlankFit.Geometry.Surfaces;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Panels;

namespace PlankFit.Export.Panels;

/// <summary>A flat panel placed on paper, and the parts that its views share.</summary>
internal sealed class PanelView(PanelPlan plan, Placing placing)
{
    /// <summary>The most that a drawn chord lies off its curve, mm on the panel.</summary>
    private const double ChordMm = 0.5;

    public PanelPlan Plan => plan;

    public Placing Placing => placing;

    public Box Extent { get; } = Box.Around(placing.Of(plan.Flat.Outline));

    public static Box TrueExtent(PanelPlan plan) => Box.Around(plan.Flat.Outline);

    public Vec2 At(double u, double v) => placing[plan.Flat.Map.At(u, v)];

    public Vec2 OnKeel(double u) => At(u, plan.Flat.Patch.Lower(u));

    public Vec2 OnChine(double u) => At(u, plan.Flat.Patch.Upper(u));

    public ImmutableArray<Vec2> Section(double u) =>
        placing.Of(FlatLines.Section(plan.Flat.Patch, plan.Flat.Map, u, ChordMm));

    public bool IsPoint(StationOnHull station) => plan.Flat.Patch.ClosesAt(station.U, 1);

    public void Outline(SheetCanvas pad) =>
        pad.Closed(
            Thinning.Closed(placing.Of(plan.Flat.Outline), 0.01),
            Pens.HullEdge,
            Layers.Hull
        );

    public void Stations(SheetCanvas pad)
    {
        foreach (StationOnHull station in plan.Stations)
        {
            if (!IsPoint(station))
            {
                pad.Open(Section(station.U), Pens.Station, Layers.Hull);
            }
        }
    }

    /// <summary>Names of the stations under the keel, each clear of its neighbour.</summary>
    public void StationNames(SheetCanvas pad, double height)
    {
        double taken = double.PositiveInfinity;
        foreach (StationOnHull station in plan.Stations)
        {
            // Forward is to the right, so the names come in from there.
            string name = PanelWords.Name(station);
            Vec2 at = OnKeel(station.U);
            double half = Letters.Width(name, height) / 2;
            if (at.X + half + 1 < taken)
            {
                pad.TextAtFirst(
                    new[] { 1.6, 4.6 }.Select(down => new Lettering(
                        Layers.Text,
                        Pen.Thin,
                        new(at.X, at.Y - down - height),
                        name,
                        height,
                        Anchor.BaselineCentre
                    )),
                    Extent.Within(-20)
                );
                taken = at.X - half;
            }
        }
    }

    public void Seams(SheetCanvas pad, PanelSeams layer, Pen pen, string on)
    {
        foreach (PanelSeam seam in layer.Seams)
        {
            pad.Open(
                Thinning.Open(placing.Of(FlatLines.Along(plan.Flat.Map, seam.Line)), 0.01),
                pen,
                on
            );
        }
    }

    /// <summary>The planks' numbers, each between the middles of its two seams, left out where it would touch the one before it.</summary>
    public void Numbers(SheetCanvas pad, PanelSeams layer)
    {
        ImmutableArray<PanelSeam> seams = [.. layer.Seams.Where(s => s.Line.Length > 1)];
        if (seams.IsEmpty)
        {
            return;
        }

        Vec2[] middles = [.. seams.Select(Middle)];
        List<(Vec2 At, PlankId Id)> places = [];
        for (int k = 1; k < seams.Length; k++)
        {
            places.Add((0.5 * (middles[k - 1] + middles[k]), seams[k].Forward));
        }

        if (seams.Length > 1)
        {
            // The first plank and the last have one seam: half a plank beyond it.
            places.Insert(0, (middles[0] + (0.5 * (middles[0] - middles[1])), seams[0].Forward));
            places.Add((middles[^1] + (0.5 * (middles[^1] - middles[^2])), seams[^1].After));
        }

        ImmutableArray<Vec2> outline = placing.Of(plan.Flat.Outline);
        List<Box> taken = [];
        foreach ((Vec2 at, PlankId id) in places)
        {
            string number = id.Padded;
            double half = (Letters.Width(number, Letters.Small) / 2) + 0.4;
            Box plate = new(at.X - half, at.Y - 1.4, at.X + half, at.Y + 1.4);
            Vec2[] corners =
            [
                new(plate.Left, plate.Bottom),
                new(plate.Right, plate.Bottom),
                new(plate.Right, plate.Top),
                new(plate.Left, plate.Top),
            ];
            if (
                Array.TrueForAll(corners, c => FlatPolygon.Holds(outline, c))
                && !taken.Exists(plate.Overlaps)
            )
            {
                taken.Add(plate);
                pad.Text(at, number, Letters.Small, Anchor.MiddleCentre);
            }
        }

        Vec2 Middle(PanelSeam seam)
        {
            Uv middle = 0.5 * (seam.Line[0] + seam.Line[^1]);
            return At(middle.U, middle.V);
        }
    }
}
