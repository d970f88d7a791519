using System.Collections.Immutable;
using System.Globalization;
using PlankFit.Nesting.Effort;
using PlankFit.Planking.Stock;

namespace PlankFit.Tests.Nesting;

/// <summary>Cutting one length of stock into given lengths, as boards and rectangular pieces without a kerf, a millimetre a unit.</summary>
internal static class ClassicalCases
{
    private const double WidthMm = 100;

    /// <summary>Far more than any of them takes: it is left as soon as the optimum is proved.</summary>
    private const int Effort = 200;

    /// <returns>Boards used, and the least number proved.</returns>
    public static (int Boards, double AtLeast) Cut(
        int stock,
        IEnumerable<(int Length, int Count)> items
    )
    {
        int id = 0;
        ImmutableArray<SawPiece> pieces =
        [
            .. items.SelectMany(i =>
                Enumerable
                    .Range(0, i.Count)
                    .Select(_ =>
                        SawPieces.Rectangle(
                            "S1-" + (++id).ToString("00", CultureInfo.InvariantCulture),
                            i.Length,
                            WidthMm
                        )
                    )
            ),
        ];
        NestSpec spec = SawPieces.Spec(
            SawPieces.Board("Y", stock, WidthMm) with
            {
                OnHand = false,
                Count = null,
            }
        ) with
        {
            KerfMm = 0,
            Rounds = Effort,
        };
        NestPlan plan = Planned.Of(spec, pieces);
        Assert.Empty(CutLaws.Broken(plan, pieces));
        Assert.Empty(plan.Unplaced);
        return (plan.Boards.Length, plan.LowerBound / spec.Boards[0].AreaMm2);
    }

    public sealed class Nowhere : IProgress<NestProgress>
    {
        public void Report(NestProgress value) { }
    }
}
