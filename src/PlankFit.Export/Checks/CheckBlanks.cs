using System.Collections.Immutable;
using PlankFit.Export.Sheets;
using PlankFit.Export.Taping;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Taping;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;

namespace PlankFit.Export.Checks;

/// <summary>Every blank of the check sheet, in its order: what to tape first where the job has [trust], then seam by seam, and the stock.</summary>
public static class CheckBlanks
{
    private static readonly ImmutableArray<int> Twice = [1, 2];

    /// <param name="advice">As the sheet has it; null where the job does not say how far it is trusted.</param>
    public static ImmutableArray<BlankGroup> Of(BottomPlan plan, TapeAdvice? advice)
    {
        List<BlankGroup> groups = [];
        if (advice is not null)
        {
            groups.Add(
                new(
                    "Tape here first",
                    [
                        .. TapedWords
                            .Numbered(advice)
                            .Select(n => OfWish(plan, n.Name, n.Wish, n.IsAgain)),
                    ]
                )
            );
            groups.Add(
                new("As planks go on", [.. advice.Edges.Select(w => OfWish(plan, "", w, false))])
            );
        }

        foreach ((_, PlankLayerPlan layer) in plan.AllPlankLayers)
        {
            foreach (Side side in new[] { Side.Starboard, Side.Port })
            {
                groups.Add(
                    new(
                        SheetWords.Of(side, layer),
                        [
                            .. layer
                                .Checks.Where(c => c.Side == side)
                                .SelectMany(c => OfCheck(plan, layer, c, advice)),
                        ]
                    )
                );
            }
        }

        groups.Add(
            new(
                "True width of the stock, the mean of ten",
                [
                    .. plan.AllPlankLayers.Select(l => new CheckBlank(
                        new(BlankId.TenOfTheStock, l.Layer.Code, null, 1),
                        $"{l.Layer.Planks.Name}: {StockCreep.Stacked} planks edge to edge",
                        StockCreep.Stacked * l.Layer.Planks.WidthMm,
                        null,
                        Twice
                    )
                    {
                        Note =
                            "A tenth of what they read is the true width: where it is not the job's, put it in the job and run again before sawing.",
                        GoesWithTheLayOut = true,
                    }),
                ]
            )
        );
        return [.. groups.Where(g => !g.Blanks.IsEmpty)];
    }

    private static CheckBlank OfWish(BottomPlan plan, string name, TapeWish wish, bool again)
    {
        TapePlace place = wish.Place;
        int read = plan.Taped?.Rows.Count(r => r.Reading.Place.Equals(place)) ?? 0;
        LengthUnit unit = plan.Job.Units;
        return new(
            BlankId.Of(place, 1),
            $"{(name.Length > 0 ? name + ". " : "")}{TapedWords.Of(place)}{TapedWords.Marked(wish.Marks, unit)}, {TapedWords.SideOf(place)}",
            wish.ExpectedMm,
            wish.LimitMm,
            [.. Enumerable.Range(1, Math.Min(read + (again ? 1 : 2), BlankId.MostTimes))]
        )
        {
            Plank = place.Edge?.Plank,
            XMm = place.Points.IsEmpty ? null : XOf(plan, place.Points[0]),
            Note =
                !again
                    ? $"Brings, 19 times in 20, {TapedWords.If}: {TapedWords.Brings(wish.Brings, unit)}."
                : wish.IsSlip ? "It was put aside: read it again."
                : "It was read once: read it again.",
            GoesWithTheLayOut = place.Edge is not null,
            IsTakenUp = true,
        };
    }

    private static double? XOf(BottomPlan plan, TapedPoint point) =>
        plan.Job.Offsets.Stations.FirstOrDefault(s => s.Name == point.Station)?.PositionMm;

    private static IEnumerable<CheckBlank> OfCheck(
        BottomPlan plan,
        PlankLayerPlan layer,
        SeamCheck check,
        TapeAdvice? advice
    )
    {
        CheckLimits? limits = advice?.Limits.GetValueOrDefault(check.PlankId);
        double usual = CheckNotes.LimitMm(plan.Job.Units);
        CheckBlank Blank(string what, string where, string words, double mm, double? limit) =>
            new(new(what, where, check.Side, 1), words, mm, limit ?? usual, Twice)
            {
                Plank = check.PlankId,
                Note = check.PlankId.Number == layer.MasterNumber ? "master" : "",
                GoesWithTheLayOut = true,
                // Where no slope is known, the hull cannot be adjusted to it.
                IsTakenUp = limit is not null && what == TapePlace.WordOf(TapeKind.SeamLength),
            };

        (TapedSeam? Seam, string Name, double? LimitMm)[] seams =
        [
            (check.Forward, "forward", limits?.ForwardSeamMm),
            (check.After, "after", limits?.AfterSeamMm),
        ];
        foreach ((TapedSeam? seam, string name, double? limit) in seams)
        {
            if (seam is null)
            {
                continue;
            }

            string edge = $"{check.PlankId} {name}",
                of = $"{name} seam, ";
            yield return Blank(
                BlankId.AlongLower,
                edge,
                $"{of}a: {Place(seam.Inboard, layer.Panel)}",
                Math.Abs(seam.Inboard.AlongMm),
                null
            );
            yield return Blank(
                BlankId.AlongUpper,
                edge,
                $"{of}b: {Place(seam.Outboard, layer.Panel)}",
                Math.Abs(seam.Outboard.AlongMm),
                null
            );
            yield return Blank(
                TapePlace.WordOf(TapeKind.SeamLength),
                edge,
                $"{of}c: taped, end to end",
                seam.LengthMm,
                limit
            );
        }

        if (check.DiagonalMm is { } diagonal)
        {
            yield return Blank(
                BlankId.Diagonal,
                check.PlankId.ToString(),
                "d: diagonal, from the forward seam's lower end to the after seam's upper end",
                diagonal,
                limits?.DiagonalMm
            );
        }
    }

    /// <summary>along keel from station 5, aft; stem, from the corner at the keel.</summary>
    private static string Place(TapedEnd end, Panel panel) =>
        end.At is PanelEdge.Lower or PanelEdge.Upper
            ? $"along {panel.WordOf(end.At)} from station {end.From}, {(end.AlongMm >= 0 ? "aft" : "forward")}"
            : $"along {panel.WordOf(end.At)}, from the corner at the {panel.WordOf(PanelEdge.Lower)}";
}
