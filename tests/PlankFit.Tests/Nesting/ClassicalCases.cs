using System.Collections.Immutable;
using System.Globalization;
using PlankFit.Nesting;
using PlankFit.Planking;

namespace PlankFit.Tests.Nesting;

/// <summary>Cutting one length of stock into given lengths, as boards and rectangular pieces without a kerf, a millimetre a unit.</summary>
internal static class ClassicalCases
{
    private const double WidthMm = 100;

    /// <summary>The planner is given as long as the issue allows; what it finds is held to the laws.</summary>
    private static readonly TimeSpan Given = TimeSpan.FromSeconds(10);

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
                            "S1-" + (++id).ToString("0000", CultureInfo.InvariantCulture),
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
            Rounds = null,
        };
        using var enough = CancellationTokenSource.CreateLinkedTokenSource(
            TestContext.Current.CancellationToken
        );
        enough.CancelAfter(Given);
        NestPlan plan = NestPlanner.Of(
            spec,
            pieces,
            LengthUnit.Millimetre,
            new Nowhere(),
            enough.Token
        );
        Assert.Empty(CutLaws.Broken(plan, pieces));
        Assert.Empty(plan.Unplaced);
        return (plan.Boards.Length, plan.LowerBound / spec.Boards[0].AreaMm2);
    }

    public sealed class Nowhere : IProgress<NestProgress>
    {
        public void Report(NestProgress value) { }
    }
}
