using System.Collections.Immutable;
using PlankFit.Geometry;

namespace PlankFit.Planking;

/// <summary>Planks that are sawn keep their shapes; what no longer fits is told.</summary>
internal static class CutPlanks
{
    /// <summary>Less than this is not told at the bench, mm.</summary>
    private const double ToldMm = 0.5;

    public static BottomPlan KeptIn(BottomPlan plan)
    {
        if (plan.Job.Standing.Cut.IsEmpty)
        {
            return plan;
        }

        var cut = plan.Job.Standing.Cut.ToDictionary(c => c.Id);
        var findings = new List<Finding>();
        var rows = new List<CutRow>();
        ImmutableArray<Plank> Kept(ImmutableArray<Plank> planks) =>
            [
                .. planks.Select(p =>
                {
                    if (!cut.Remove(p.Id, out CutPlank? sawn))
                    {
                        return p;
                    }

                    findings.AddRange(Misfits(plan.Job, sawn, p));
                    rows.Add(new(p.Id, CutFit.Of(sawn, p)));
                    return sawn.In(p);
                }),
            ];

        ImmutableArray<LayerPlan> layers =
        [
            .. plan.Layers.Select(l =>
                l is PlankLayerPlan layer
                    ? layer with
                    {
                        Starboard = Ticked(Kept(layer.Starboard)),
                        Port = Ticked(Kept(layer.Port)),
                    }
                    : l
            ),
        ];
        findings.AddRange(
            cut.Values.Select(c => new Finding(
                Severity.Warning,
                c.Id,
                "it is sawn, and the lay-out as it is now has no plank of this number: put it aside, or take it out of the record of what is cut"
            ))
        );
        return plan with
        {
            Layers = layers,
            Findings = plan.Findings.AddRange(findings),
            CutRows = [.. rows],
        };
    }

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
            && mark.Label.TrimEnd([.. "abcdefghijklmnopqrstuvwxyz"])
                == seam.ToString(System.Globalization.CultureInfo.InvariantCulture);
        return
        [
            .. planks.Select(
                (p, i) =>
                {
                    if (p.IsCut)
                    {
                        return p;
                    }

                    bool ahead =
                            i > 0
                            && planks[i - 1] is { IsCut: true } f
                            && Moved(f.AfterEdge, p.ForwardEdge),
                        behind =
                            i + 1 < planks.Length
                            && planks[i + 1] is { IsCut: true } a
                            && Moved(a.ForwardEdge, p.AfterEdge);
                    return ahead || behind
                        ? p with
                        {
                            Marks =
                            [
                                .. p.Marks.Where(m =>
                                    !(ahead && OfSeam(m, p.Number - 1))
                                    && !(behind && OfSeam(m, p.Number))
                                ),
                            ],
                        }
                        : p;
                }
            ),
        ];
    }

    /// <summary>The width and the fitted ends as sawn against the room between the seams and against the edges of the bottom as they now are.</summary>
    private static IEnumerable<Finding> Misfits(Job job, CutPlank sawn, Plank now)
    {
        string Mm(double mm) => LengthText.ForPaper(mm, job.Units);
        // Shifted bodily with its seams a plank still fits: what counts across is the room between them.
        CutFit fit = CutFit.Of(sawn, now);
        if (fit.OpenMm > ToldMm)
        {
            yield return new(
                Severity.Warning,
                sawn.Id,
                $"it is sawn, and the room between its seams as they lie is up to {Mm(fit.OpenMm)} wider: a seam stands open by that; offer it up before glue, and fill"
            );
        }

        if (fit.TightMm > ToldMm)
        {
            yield return new(
                Severity.Warning,
                sawn.Id,
                $"it is sawn, and the room between its seams as they lie is up to {Mm(fit.TightMm)} narrower: offer it up before glue, and plane its free edge"
            );
        }

        foreach (CutEnd end in sawn.Ends.Where(e => e.Cut == EndCut.Fit))
        {
            if (now.Ends.FirstOrDefault(e => e.At == end.At) is not { } today)
            {
                yield return new(
                    Severity.Warning,
                    sawn.Id,
                    $"it is sawn to fit at the {Word(end.At)}, where the plank of its number no longer ends"
                );
                continue;
            }

            // In space: a flat plank's own coordinates begin at its net end, and move with it.
            Vec3 centre =
                1.0 / now.Outline.Length * now.Outline.Aggregate(Vec3.Zero, (a, b) => a + b);
            double shorter = (Middle(today.Outline) - Middle(end.Outline)).Dot(
                Middle(today.Outline) - centre
            );
            double apart = Apart(end.Outline, today.Outline);
            if (apart > ToldMm)
            {
                yield return new(
                    Severity.Warning,
                    sawn.Id,
                    $"it is sawn, and its end at the {Word(end.At)} no longer fits: as the hull stands it is about {Mm(apart)} {(shorter > 0 ? "short" : "long")}; {(shorter > 0 ? "glue a piece on, or saw it anew" : "scribe and trim")}"
                );
            }
        }
    }

    private static Vec3 Middle(ImmutableArray<Vec3> line) => 0.5 * (line[0] + line[^1]);

    private static string Word(HullEdge edge) => edge.ToString().ToLowerInvariant();

    /// <summary>How far the points of one line lie from the other, the most, mm.</summary>
    private static double Apart(ImmutableArray<Vec3> line, ImmutableArray<Vec3> other)
    {
        if (line.IsEmpty || other.Length < 2)
        {
            return line.IsEmpty && other.IsEmpty ? 0 : double.PositiveInfinity;
        }

        // The ends of seams run out along the edges of the bottom: only what lies abreast is compared.
        return new[] { 0.1, 0.3, 0.5, 0.7, 0.9 }.Max(part =>
        {
            Vec3 p = line[(int)(part * (line.Length - 1))];
            return Enumerable
                .Range(0, other.Length - 1)
                .Min(i => ToSegment(p, other[i], other[i + 1]));
        });
    }

    private static double ToSegment(Vec3 p, Vec3 a, Vec3 b)
    {
        Vec3 run = b - a;
        double t = run.NormSquared > 0 ? Math.Clamp((p - a).Dot(run) / run.NormSquared, 0, 1) : 0;
        return (a + (t * run)).ChordTo(p);
    }
}
