using PlankFit.App.Showing;
using PlankFit.Pages.Sessions;
using PlankFit.Planking.Whole;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Pages;

/// <summary>Planks are shown before the rest is worked out; a newer text takes the rest's place and never the planks'.</summary>
public sealed class PlanksFirstTests
{
    private const int Most = 4;

    private static BottomPlan Plan => DemoPlans.Of("tender");

    /// <summary>Lays as a planner does: planks, and then parts, before each of which it looks whether it is stopped.</summary>
    private static Func<CancellationToken, Action<BottomPlan>, ShownJob> Laying(Action reached) =>
        (stop, planks) =>
        {
            stop.ThrowIfCancellationRequested();
            planks(Plan);
            stop.ThrowIfCancellationRequested();
            reached();
            return new(Plan, []);
        };

    /// <summary>The hand never rests: each text's planks are seen, and every fifth text has all that goes with them.</summary>
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void OfTextsThatAreOvertakenEveryFifthIsLaidWhole(bool isLookedAt)
    {
        var listeners = new Listeners();
        if (isLookedAt)
        {
            Assert.NotNull(listeners.Join());
        }

        var first = new PlanksFirst(listeners);
        using var newer = new CancellationTokenSource();
        newer.Cancel();
        List<int> shown = [],
            whole = [];
        for (int turn = 1; turn <= 2 * (Most + 1); turn++)
        {
            int at = turn;
            (ShownJob Shown, LaidPlanks? Planks)? laid = first.Of(
                at,
                Laying(() => whole.Add(at)),
                p => shown.Add(p.Turn),
                CancellationToken.None,
                newer.Token
            );
            Assert.Equal(at % (Most + 1) == 0, laid is not null);
            Assert.Equal(laid is null ? null : at, laid?.Planks?.Turn);
        }

        Assert.Equal(Enumerable.Range(1, 2 * (Most + 1)), shown);
        Assert.Equal([Most + 1, 2 * (Most + 1)], whole);
    }

    /// <summary>Overtaken now and then, and not in a row: what is laid whole begins the count anew.</summary>
    [Fact]
    public void ATextThatNothingOvertakesIsLaidWhole()
    {
        var first = new PlanksFirst(new());
        using var newer = new CancellationTokenSource();
        newer.Cancel();
        for (int turn = 1; turn <= 4 * Most; turn++)
        {
            bool isOvertaken = turn % 2 == 0;
            Assert.Equal(
                !isOvertaken,
                first.Of(
                    turn,
                    Laying(() => { }),
                    _ => { },
                    CancellationToken.None,
                    isOvertaken ? newer.Token : CancellationToken.None
                )
                    is not null
            );
        }
    }

    /// <summary>Parts that go side by side may end in one fault of several; only what nobody stopped is a fault of the program.</summary>
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void HowAStopIsToldDoesNotMatter(bool isOvertaken)
    {
        using var newer = new CancellationTokenSource();
        (ShownJob Shown, LaidPlanks? Planks)? Laid() =>
            new PlanksFirst(new()).Of(
                1,
                (stop, planks) =>
                {
                    planks(Plan);
                    throw new AggregateException(new OperationCanceledException(stop));
                },
                _ => { },
                CancellationToken.None,
                newer.Token
            );
        if (isOvertaken)
        {
            newer.Cancel();
            Assert.Null(Laid());
        }
        else
        {
            Assert.Throws<AggregateException>(() => Laid());
        }
    }

    /// <summary>A server that ends is no newer text.</summary>
    [Fact]
    public void TheEndIsTheEnd()
    {
        using var end = new CancellationTokenSource();
        Assert.ThrowsAny<OperationCanceledException>(() =>
            new PlanksFirst(new()).Of(
                1,
                Laying(() => { }),
                _ => end.Cancel(),
                end.Token,
                CancellationToken.None
            )
        );
    }

    /// <summary>What pages ask for is there before they are told that it is.</summary>
    [Fact]
    public async Task PagesAreToldOfWhatIsThere()
    {
        var listeners = new Listeners();
        Listener page = listeners.Join()!;
        LaidPlanks? seen = null;
        Assert.NotNull(
            new PlanksFirst(listeners).Of(
                7,
                Laying(() => { }),
                p => seen = p,
                CancellationToken.None,
                CancellationToken.None
            )
        );
        await foreach (string news in page.Heard(TestContext.Current.CancellationToken))
        {
            Assert.Equal("planks", news);
            break;
        }

        Assert.Same(seen!.Packed, seen.Fetched());
        Assert.NotEmpty(seen.Packed);
    }
}
