using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Units;

namespace PlankFit.Planking.Laying;

/// <summary>Planks that are sawn keep their shapes; what no longer fits is told.</summary>
internal static class SawnPlanks
{
    /// <summary>Less than this is not told at the bench, mm.</summary>
    private const double ToldMm = 0.5;

    public static Planked KeptIn(Planked planked)
    {
        if (planked.Job.AsBuilt.Sawn.IsEmpty)
        {
            return planked;
        }

        var cut = planked.Job.AsBuilt.Sawn.ToDictionary(c => c.Id);
        var findings = new List<Finding>();
        var rows = new List<SawnRow>();
        ImmutableArray<Plank> Kept(PlankLayerPlan layer, Side side) =>
            [
                .. layer
                    .On(side)
                    .Select(p =>
                    {
                        if (!cut.Remove(p.Id, out SawnPlank? sawn))
                        {
                            return p;
                        }

                        if (
                            StrayIn(
                                layer.Of(side),
                                sawn,
                                p,
                                planked.Job.Units,
                                out FlatShift shift
                            ) is
                            { } why
                        )
                        {
                            findings.Add(Stray(sawn, why));
                            return p;
                        }

                        findings.AddRange(
                            SawnMisfits.Of(planked.Job, layer.Planks, sawn, p, shift)
                        );
                        rows.Add(
                            new(
                                p.Id,
                                SawnFit.Of(sawn, p, layer.Planks) with
                                {
                                    ShortAtAnEnd = SawnMisfits.IsShort(sawn, p, shift),
                                }
                            )
                        );
                        return sawn.In(p) with { Place = p, Map = p.Map.Of(shift) };
                    }),
            ];

        ImmutableArray<LayerPlan> layers =
        [
            .. planked.Layers.Select(l =>
                l is PlankLayerPlan layer
                    ? layer with
                    {
                        Starboard = Ticked(Kept(layer, Side.Starboard)),
                        Port = Ticked(Kept(layer, Side.Port)),
                    }
                    : l
            ),
        ];
        findings.AddRange(cut.Values.Select(c => Stray(c, Missing(planked, c))));
        return planked with
        {
            Layers = layers,
            Findings = planked.Findings.AddRange(findings),
            SawnRows = [.. rows],
        };
    }

    /// <summary>Why a sawn plank cannot be held against the place of its number; null where it can, and how it lies there.</summary>
    private static string? StrayIn(
        PlankLayerPlan layer,
        SawnPlank sawn,
        Plank place,
        LengthUnit unit,
        out FlatShift shift
    )
    {
        shift = FlatShift.None;
        if (
            layer.Strays.TryGetValue(
                sawn.Id with
                {
                    Side = Side.Starboard,
                },
                out Func<LengthUnit, string>? why
            ) || layer.Strays.TryGetValue(sawn.Id, out why)
        )
        {
            return why(unit);
        }

        if (SawnPlacing.Of(sawn, place, layer.Surface) is not { } lies)
        {
            return "it was sawn for a place that is nowhere near the one that its number has now";
        }

        shift = lies;
        double longer = Length(sawn.Shape.FlatCut) - Length(place.FlatCut);
        return place.Map.Of(lies).Reaches(sawn.Shape.FlatCut.Concat(sawn.Shape.FlatNet))
            ? null
            : $"it is {LengthText.ForPaper(Math.Abs(longer), unit)} {(longer > 0 ? "longer" : "shorter")} than its place is now";
    }

    private static double Length(ImmutableArray<Vec2> shape) =>
        shape.Max(p => p.X) - shape.Min(p => p.X);

    private static string Missing(Planked planked, SawnPlank sawn) =>
        planked.PlankLayers.FirstOrDefault(l => l.Number == sawn.Layer) is not { } layer
            ? $"it is of layer {sawn.Layer}, and the job has {planked.PlankLayers.Count()} of planks"
        : layer
            .Of(sawn.Side)
            .Strays.TryGetValue(
                sawn.Id with
                {
                    Side = Side.Starboard,
                },
                out Func<LengthUnit, string>? why
            )
            ? why(planked.Job.Units)
        : layer.Of(sawn.Side).Strays.TryGetValue(sawn.Id, out why) ? why(planked.Job.Units)
        : "the lay-out as it is now has no plank of this number";

    private static Finding Stray(SawnPlank sawn, string why) =>
        new(
            Severity.Warning,
            sawn.Id,
            $"it is sawn, and {why}: nothing is laid on from it, and a plank of this number is another; put it aside, and take it off the record (`plankfit sawn JOB {sawn.Id} --forget`), or put the job back as it was"
        )
        {
            Rank = Rank.DoNotSaw,
        };

    /// <summary>
    /// Ticks stand so far from the inboard end of their seam. Where that end has moved since one of two neighbours was sawn the other's would not meet them: none
    /// is better than a wrong one.
    /// </summary>
    private static ImmutableArray<Plank> Ticked(ImmutableArray<Plank> planks)
    {
        bool Moved(PlankEdge a, PlankEdge b) =>
            a.Exists && b.Exists && a.Seam[0].ChordTo(b.Seam[0]) > ToldMm;
        bool OfSeam(PlankMark mark, int seam) =>
            mark.Kind == "witness"
            && mark.Label.TrimEnd([.. "abcdefghijklmnopqrstuvwxyz"]) == PlankId.ShortOf(seam);
        return
        [
            .. planks.Select(
                (p, i) =>
                {
                    if (p.IsSawn)
                    {
                        return p;
                    }

                    bool ahead =
                            i > 0
                            && planks[i - 1] is { IsSawn: true } f
                            && Moved(f.AfterEdge, p.ForwardEdge),
                        behind =
                            i + 1 < planks.Length
                            && planks[i + 1] is { IsSawn: true } a
                            && Moved(a.ForwardEdge, p.AfterEdge);
                    return ahead || behind
                        ? p with
                        {
                            Form = p.Form with
                            {
                                Marks =
                                [
                                    .. p.Marks.Where(m =>
                                        !(ahead && OfSeam(m, p.Number - 1))
                                        && !(behind && OfSeam(m, p.Number))
                                    ),
                                ],
                            },
                        }
                        : p;
                }
            ),
        ];
    }
}
