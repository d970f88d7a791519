using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;
using PlankFit.Geometry.Surfaces;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Whole;

namespace PlankFit.Tests.Planking.AsBuilt;

/// <summary>What must hold for every plan with planks sawn, whatever the job says since.</summary>
internal static class SawnLaws
{
    public static List<string> Broken(BottomPlan plan, ImmutableArray<SawnPlank> sawn)
    {
        var broken = new List<string>();
        foreach (SawnPlank record in sawn)
        {
            OfRecord(plan, record, broken);
        }

        foreach (PlankLayerPlan layer in plan.PlankLayers)
        {
            foreach (Side side in new[] { Side.Starboard, Side.Port })
            {
                Neighbours(layer, side, broken);
            }
        }

        broken.AddRange(
            BottomLaws.Broken(Places(plan)).Where(b => !Between(plan, b) && !TicksOfSawn(plan, b))
        );
        return broken;
    }

    /// <summary>Kept to the last digit, or named; and a thickness that is no longer the layer's is told.</summary>
    private static void OfRecord(BottomPlan plan, SawnPlank record, List<string> broken)
    {
        bool told = plan.Findings.Any(f => f.About.Plank == record.Id);
        if (plan.Find(record.Id) is not { IsSawn: true } plank)
        {
            if (!told)
            {
                broken.Add($"{record.Id} is neither kept nor told");
            }

            return;
        }

        bool same =
            plank.Outline.SequenceEqual(record.Shape.Outline)
            && plank.FlatNet.SequenceEqual(record.Shape.FlatNet)
            && plank.FlatCut.SequenceEqual(record.Shape.FlatCut)
            && plank.ForwardEdge.Seam.SequenceEqual(record.Shape.Forward.Seam)
            && plank.AfterEdge.Seam.SequenceEqual(record.Shape.After.Seam)
            && plank.ForwardEdge.Flat.SequenceEqual(record.Shape.Forward.Flat)
            && plank.AfterEdge.Flat.SequenceEqual(record.Shape.After.Flat)
            && plank.Ends.Length == record.Form.Ends.Length
            && plank
                .Ends.Zip(record.Form.Ends)
                .All(e =>
                    e.First.At == e.Second.At
                    && e.First.Cut == e.Second.Cut
                    && e.First.CutDegrees == e.Second.CutDegrees
                    && e.First.BevelDegrees == e.Second.BevelDegrees
                    && e.First.NetLine.SequenceEqual(e.Second.NetLine)
                    && e.First.OuterLine.SequenceEqual(e.Second.OuterLine)
                    && e.First.InnerLine.SequenceEqual(e.Second.InnerLine)
                )
            && plank.Form.Sizes == record.Form.Sizes
            && (plank.Kind, plank.Form.Fit, plank.Bend)
                == (record.Form.Kind, record.Form.Fit, record.Form.Bend)
            && Told(plank.ForwardEdge) == Told(record.Shape.Forward)
            && Told(plank.AfterEdge) == Told(record.Shape.After)
            && plank.Marks.SequenceEqual(record.Form.Marks);

        static PlankEdge Told(PlankEdge edge) => edge with { Seam = default, Flat = default };
        if (!same)
        {
            broken.Add($"{record.Id} is not what its record says");
        }

        double thickness = plan.PlankLayers.First(l => l.Number == record.Layer).Planks.ThicknessMm;
        if (Math.Abs(thickness - record.SawnFor!.ThicknessMm) > 0.11 && !told)
        {
            broken.Add(
                $"{record.Id}: {record.SawnFor.ThicknessMm} mm of {thickness}, and not told"
            );
        }
    }

    /// <summary>The edge of a plank beside a sawn one runs through the feet of the two ends of the sawn one's edge.</summary>
    private static void Neighbours(PlankLayerPlan layer, Side side, List<string> broken)
    {
        ImmutableArray<Plank> row = layer.On(side);
        for (int i = 0; i + 1 < row.Length; i++)
        {
            (Plank a, Plank b) = (row[i], row[i + 1]);
            if (a.IsSawn != b.IsSawn)
            {
                PlankEdge sawn = a.IsSawn ? a.AfterEdge : b.ForwardEdge,
                    free = a.IsSawn ? b.ForwardEdge : a.AfterEdge;
                Plank plank = a.IsSawn ? b : a;
                Ticks(a.IsSawn ? a : b, plank, a.IsSawn, broken);
                if (sawn.Exists != free.Exists)
                {
                    broken.Add($"{a.Id} and {b.Id} do not share an edge");
                }
                else if (
                    sawn.Exists
                    && new[] { sawn.Seam[0], sawn.Seam[^1] }.Max(p =>
                        Off(layer.Of(side), plank, free, side, p)
                    )
                        is var off
                            and > 0.05
                )
                {
                    broken.Add($"{plank.Id} lies {off} mm off the edge of the sawn one beside it");
                }
            }
        }
    }

    /// <summary>How far a point's foot on the surface lies off an edge, square across in the flat; past its ends from its end's run.</summary>
    private static double Off(
        PlankLayerPlan layer,
        Plank plank,
        PlankEdge edge,
        Side side,
        Vec3 point
    )
    {
        int near = Enumerable.Range(0, edge.Seam.Length).MinBy(i => edge.Seam[i].ChordTo(point));
        Assert.True(
            ClosestPoint.TryFind(
                layer.Surface,
                side == Side.Port ? point.MirroredInY() : point,
                plank.Map.On(edge.Flat[near]),
                1e-7,
                out ClosestPoint.Result foot
            )
        );
        Vec2 at = plank.Map.Flat(foot.Uv, edge.Flat[near]);
        return edge
            .Flat.Zip(edge.Flat.Skip(1))
            .Select(
                (s, k) =>
                {
                    Vec2 run = s.Second - s.First;
                    double t = run.Dot(at - s.First) / run.Dot(run);
                    t =
                        k == 0 && t < 0 || k == edge.Flat.Length - 2 && t > 1
                            ? t
                            : Math.Clamp(t, 0, 1);
                    return (s.First + (t * run)).ChordTo(at);
                }
            )
            .Min();
    }

    /// <summary>The plan as it would be sawn now throughout, its sawn planks' places known for what they are.</summary>
    private static BottomPlan Places(BottomPlan plan)
    {
        ImmutableArray<Plank> Of(ImmutableArray<Plank> row) =>
            [.. row.Select(p => p.Place is { } place ? place with { IsSawn = true } : p)];

        // Port apart is laid in the starboard frame, without its sawn planks' shapes: there it is their numbers that tell.
        PlankLayerPlan? Apart(PlankLayerPlan? apart, ImmutableArray<Plank> port) =>
            apart is null
                ? null
                : apart with
                {
                    Starboard =
                    [
                        .. apart.Starboard.Zip(port, (s, p) => s with { IsSawn = p.IsSawn }),
                    ],
                    Port = [.. apart.Port.Zip(port, (s, p) => s with { IsSawn = p.IsSawn })],
                };
        return plan with
        {
            Layers =
            [
                .. plan.Layers.Select(l =>
                    l is PlankLayerPlan p
                        ? p with
                        {
                            Starboard = Of(p.Starboard),
                            Port = Of(p.Port),
                            PortApart = Apart(p.PortApart, p.Port),
                        }
                        : l
                ),
            ],
        };
    }

    /// <summary>Ticks of a sawn plank are those of its record; where they would not meet its neighbour has none, which <see cref="Ticks"/> judges.</summary>
    private static bool TicksOfSawn(BottomPlan plan, string law) =>
        law.EndsWith("different ticks on their seam", StringComparison.Ordinal)
        && law.Split(' ') is [var a, "and", var b, ..]
        && (plan.Find(a)!.IsSawn || plan.Find(b)!.IsSawn);

    /// <summary>A tick that a free plank has on the seam beside a sawn one meets the sawn plank's of that name within half a millimetre.</summary>
    private static void Ticks(Plank sawn, Plank free, bool freeIsAft, List<string> broken)
    {
        string seam = (freeIsAft ? sawn : free).Id.Short;
        bool Of(PlankMark m) =>
            m.Kind == "witness" && m.Label.TrimEnd([.. "abcdefghijklmnopqrstuvwxyz"]) == seam;
        PlankEdge of = freeIsAft ? sawn.AfterEdge : sawn.ForwardEdge,
            on = freeIsAft ? free.ForwardEdge : free.AfterEdge;
        foreach (PlankMark mark in free.Marks.Where(Of))
        {
            // Along the seam from its inboard end, and that end where it was.
            if (
                sawn.Marks.FirstOrDefault(m => Of(m) && m.Label == mark.Label) is { } twin
                && Math.Abs(twin.At.ChordTo(of.Flat[0]) - mark.At.ChordTo(on.Flat[0]))
                    + of.Seam[0].ChordTo(on.Seam[0])
                    > 1.1
            )
            {
                broken.Add($"{free.Id}: tick {mark.Label} does not meet that of {sawn.Id}");
            }
        }
    }

    /// <summary>Planks between sawn ones share out the room, and may need wider stock, which is told from 0.02 mm on.</summary>
    private static bool Between(BottomPlan plan, string law)
    {
        // A port side that is laid apart goes by starboard ids.
        return law.Contains("mm wide,", StringComparison.Ordinal)
            && PlankId.Parse(law.Split(':')[0]) is { } id
            && new[] { id, id.Twin }
                .Select(plan.Find)
                .OfType<Plank>()
                .Any(plank =>
                    plan.PlankLayers.First(l => l.Number == plank.Layer) is var layer
                    && layer.On(plank.Side) is var row
                    && row.Any(p => p.IsSawn && p.Number < plank.Number)
                    && row.Any(p => p.IsSawn && p.Number > plank.Number)
                    && (
                        plank.WidestMm <= layer.Planks.WidthMm + 0.02
                        || plan.Findings.Any(f =>
                            f.Message.Contains("wider stock", StringComparison.Ordinal)
                        )
                    )
                );
    }
}
