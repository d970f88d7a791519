using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Units;

namespace PlankFit.Planking.Laying;

/// <summary>What of a sawn plank no longer fits its place, in words: the room between its seams, its ends, its thickness.</summary>
internal static class SawnMisfits
{
    /// <summary>Less than this is not told at the bench, mm.</summary>
    private const double ToldMm = 0.5;

    /// <param name="shift">How it lies in the coordinates of its place.</param>
    public static IEnumerable<Finding> Of(
        PlankingJob job,
        PlankLayerSpec layer,
        SawnPlank sawn,
        Plank now,
        FlatShift shift
    )
    {
        string Mm(double mm) => LengthText.ForPaper(mm, job.Units);
        Finding Told(string what, Rank rank = Rank.SawAfter) =>
            new(Severity.Warning, sawn.Id, $"it is sawn, and {what}") { Rank = rank };

        // Shifted bodily with its seams a plank still fits: what counts across is the room between them.
        var fit = SawnFit.Of(sawn, now, layer);
        if (fit.OpenMm > ToldMm)
        {
            yield return Told(
                $"the room between its seams as they lie is up to {Mm(fit.OpenMm)} wider: a seam stands open by that; offer it up before glue, and fill"
            );
        }

        if (fit.TightMm > ToldMm)
        {
            yield return Told(
                $"the room between its seams as they lie is up to {Mm(fit.TightMm)} narrower: offer it up before glue, and plane its free edge"
            );
        }

        if (Math.Abs(fit.ThinnerMm) > SawnFindings.ThicknessMm)
        {
            yield return Told(
                $"it is {LengthText.FormatExact(layer.ThicknessMm - fit.ThinnerMm, job.Units)} thick where its layer now has {LengthText.FormatExact(layer.ThicknessMm, job.Units)}: its outer face stands {LengthText.FormatExact(Math.Abs(fit.ThinnerMm), job.Units)} {(fit.ThinnerMm > 0 ? "in from" : "proud of")} its neighbours'; {(fit.ThinnerMm > 0 ? "pack it out, or saw it anew" : "plane it down before the next layer")}"
            );
        }

        foreach (PlankEnd today in now.Ends.Where(e => sawn.Form.Ends.All(s => s.At != e.At)))
        {
            yield return Told(
                $"its place now ends at the {today.Word} too, for which nothing of it was sawn: offer it up and scribe it there"
            );
        }

        foreach (PlankEnd end in sawn.Form.Ends)
        {
            if (now.Ends.All(e => e.At != end.At))
            {
                if (end.Cut == EndCut.Fit)
                {
                    yield return new(
                        Severity.Warning,
                        sawn.Id,
                        $"it is sawn to fit at the {end.Word}, where the plank of its number no longer ends"
                    )
                    {
                        Rank = Rank.DoNotSaw,
                    };
                }

                continue;
            }

            double shorter = Shorter(sawn, end, now, shift);
            if (end.Cut == EndCut.Fit && Math.Abs(shorter) > ToldMm)
            {
                yield return Told(
                    $"its end at the {end.Word} no longer fits: as the hull stands it is about {Mm(Math.Abs(shorter))} {(shorter > 0 ? "short" : "long")}; {(Reaches(end, shorter) ? "scribe and trim" : "glue a piece on, or saw it anew")}",
                    Reaches(end, shorter) ? Rank.SawAfter : Rank.DoNotSaw
                );
            }
            else if (end.Cut == EndCut.LeftLong && !Reaches(end, shorter))
            {
                yield return Told(
                    $"its end at the {end.Word} does not reach: it was left {Mm(end.OverhangMm ?? 0)} long, and as the hull stands the edge lies {Mm(shorter)} further out; glue a piece on, or saw it anew",
                    Rank.DoNotSaw
                );
            }
        }
    }

    /// <summary>Whether it does not reach at one of its ends.</summary>
    public static bool IsShort(SawnPlank sawn, Plank now, FlatShift shift) =>
        sawn
            .Form.Ends.Where(e => now.Ends.Any(n => n.At == e.At))
            .Any(e => !Reaches(e, Shorter(sawn, e, now, shift)));

    /// <summary>Whether an end that is too short by so much has the wood for it.</summary>
    private static bool Reaches(PlankEnd end, double shorter) =>
        end.Cut switch
        {
            EndCut.Fit => shorter <= Math.Max(ToldMm, end.AllowanceMm),
            EndCut.LeftLong => shorter <= (end.OverhangMm ?? 0) + ToldMm,
            _ => true,
        };

    /// <summary>
    /// How far the place's end lies beyond the sawn one, square to it: of its lines on the middle of the thickness and on both faces the one that is furthest off, so
    /// that a bevel that no longer fits is told as well. Positive where the plank is short.
    /// </summary>
    private static double Shorter(SawnPlank sawn, PlankEnd end, Plank now, FlatShift shift)
    {
        PlankEnd place = now
            .Ends.Where(e => e.At == end.At)
            .MinBy(e => Middle(e.NetLine).ChordTo(shift.To(Middle(end.NetLine))))!;
        Vec2 centre = new(
            sawn.Shape.FlatNet.Average(p => p.X),
            sawn.Shape.FlatNet.Average(p => p.Y)
        );
        return new[]
        {
            (end.NetLine, place.NetLine),
            (end.OuterLine, place.OuterLine),
            (end.InnerLine, place.InnerLine),
        }
            .Select(l => Beyond(l.Item1, [.. l.Item2.Select(shift.Back)], centre))
            .MaxBy(Math.Abs);
    }

    /// <summary>The furthest that a line lies outside another (inside: negative), square to the other's chord, at places abreast of it.</summary>
    private static double Beyond(ImmutableArray<Vec2> line, Vec2[] now, Vec2 centre)
    {
        if (line.Length < 2 || now.Length < 2 || line[0].ChordTo(line[^1]) < 1)
        {
            return 0;
        }

        Vec2 along = (line[^1] - line[0]).Unit(),
            out_ = along.Left().Dot(Middle(line) - centre) > 0 ? along.Left() : -1 * along.Left();

        // The ends of seams run out along the edges of the bottom: only what lies abreast is compared.
        return new[] { 0.1, 0.3, 0.5, 0.7, 0.9 }
            .Select(part =>
            {
                Vec2 p = line[(int)(part * (line.Length - 1))];
                return out_.Dot(Abreast(now, along, along.Dot(p)) - p);
            })
            .MaxBy(Math.Abs);
    }

    /// <summary>The point of a line at a distance along a direction; carried straight on past its ends.</summary>
    private static Vec2 Abreast(Vec2[] line, Vec2 along, double at)
    {
        int i = 1;
        bool rising = along.Dot(line[^1] - line[0]) > 0;
        while (i < line.Length - 1 && along.Dot(line[i]) < at == rising)
        {
            i++;
        }

        (Vec2 a, Vec2 b) = (line[i - 1], line[i]);
        double run = along.Dot(b - a);
        return Math.Abs(run) > 1e-9 ? a + ((at - along.Dot(a)) / run * (b - a)) : a;
    }

    private static Vec2 Middle(ImmutableArray<Vec2> line) => 0.5 * (line[0] + line[^1]);
}
