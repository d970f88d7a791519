using System.Collections.Immutable;
using CsCheck;
using PlankFit.Planking.Stock;

namespace PlankFit.Tests.Nesting;

/// <summary>
/// Sheets ripped into lanes, with pieces as long as the sheet: one to a lane, so that the fewest sheets are those of packing widths into bins, which are counted here by
/// trying every way.
/// </summary>
public sealed class LanesOfSheetsTests
{
    private const double LengthMm = 1000;

    /// <summary>Seven lanes of 150 leave 146 of a sheet: a lane too, though a lane for the widest pieces is wider.</summary>
    [Fact]
    public void WhatIsLeftBesideTheWidestLanesIsALane()
    {
        double[] widths = [.. Enumerable.Repeat(150.0, 7), 146];
        NestPlan plan = Plan(Sheet(1196 + (7 * 3), []), widths, 3);
        Assert.Single(plan.Boards);
        Assert.Equal(0, plan.GapPercent, 1e-3);
    }

    /// <summary>Never a bound above the fewest sheets, never a plan below them; of sheets without faults, both within one sheet of them. Lanes come in classes of width: beside a fault one may be just too wide.</summary>
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void BoundAndPlanEncloseTheFewestSheets(bool fault) =>
        Gen.Select(
                Gen.Int[300, 420],
                Gen.Int[90, 160].Array[4, 8],
                Gen.Int[0, 4],
                Gen.Int[100, 200],
                Gen.Int[10, 60]
            )
            .Sample(
                (width, widths, kerf, from, wide) =>
                {
                    double[] parts = fault
                        ? [from + kerf, width - from - wide + kerf]
                        : [width + kerf];
                    double[] sizes = [.. widths.Select(w => (double)w + kerf).OrderDescending()];
                    if (sizes[0] > parts.Max())
                    {
                        return;
                    }

                    int fewest = Fewest(sizes, parts);
                    NestPlan plan = Plan(
                        Sheet(width, fault ? [new(400, 450, from, from + wide)] : []),
                        [.. widths.Select(w => (double)w)],
                        kerf
                    );
                    Assert.Empty(plan.Unplaced);
                    double bound = plan.LowerBound / (LengthMm * width);
                    Assert.True(bound <= fewest * (1 + 1e-9), $"bound {bound} of {fewest} sheets");
                    Assert.True(plan.Boards.Length >= fewest);
                    if (!fault)
                    {
                        Assert.InRange(plan.Boards.Length, fewest, fewest + 1);
                        Assert.True(bound > fewest - 1.5, $"bound {bound} of {fewest} sheets");
                    }
                },
                iter: 60
            );

    private static StockBoard Sheet(double widthMm, ImmutableArray<BoardFault> faults) =>
        SawPieces.Board("PLY-1", LengthMm, widthMm) with
        {
            Kind = StockKind.Sheet,
            Count = null,
            OnHand = false,
            Faults = faults,
        };

    private static NestPlan Plan(StockBoard sheet, double[] widths, double kerf)
    {
        ImmutableArray<SawPiece> pieces =
        [
            .. widths.Select((w, i) => SawPieces.Rectangle($"S1-{i + 1:00}", LengthMm, w)),
        ];
        NestSpec spec = SawPieces.Spec(sheet) with { KerfMm = kerf, ProudMm = 0, Rounds = 5 };
        NestPlan plan = Planned.Lawful(spec, pieces);
        return plan;
    }

    /// <summary>By trying every sheet and part of a sheet for every piece, the widest first.</summary>
    private static int Fewest(double[] sizes, double[] parts)
    {
        int best = sizes.Length;
        var room = new List<double[]>();
        void Go(int i)
        {
            if (room.Count >= best)
            {
                return;
            }

            if (i == sizes.Length)
            {
                best = room.Count;
                return;
            }

            foreach (double[] sheet in room.ToArray())
            {
                for (int p = 0; p < sheet.Length; p++)
                {
                    if (sheet[p] >= sizes[i])
                    {
                        sheet[p] -= sizes[i];
                        Go(i + 1);
                        sheet[p] += sizes[i];
                    }
                }
            }

            double[] fresh = [.. parts];
            room.Add(fresh);
            for (int p = 0; p < parts.Length; p++)
            {
                if (fresh[p] >= sizes[i])
                {
                    fresh[p] -= sizes[i];
                    Go(i + 1);
                    fresh[p] += sizes[i];
                }
            }

            room.Remove(fresh);
        }

        Go(0);
        return best;
    }
}
