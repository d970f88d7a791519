using System.Collections.Immutable;
using PlankFit.Planking.Glue.Mixing;

namespace PlankFit.Planking.Glue;

/// <summary>What the same work comes to where every day is warmer or cooler than planned, by so many degrees.</summary>
/// <param name="Degrees">Warmer where more than nought.</param>
/// <param name="LastDownAt">When the last of it is down, minutes from midnight of the first day; null where nothing is mixed.</param>
/// <param name="MostGrams">The largest batch.</param>
/// <param name="NotPlanned">Layers that no session was found for.</param>
public sealed record OtherDay(
    double Degrees,
    int Batches,
    int Sessions,
    double? LastDownAt,
    double MostGrams,
    ImmutableArray<string> NotPlanned
)
{
    public static OtherDay Of(GluePlan plan, double degrees)
    {
        GlueBatch[] batches = [.. plan.Batches];
        return new(
            degrees,
            batches.Length,
            plan.Sessions.Length,
            batches.Length == 0 ? null : batches.Max(b => b.Clocks.DownAt),
            batches.Select(b => b.Grams).DefaultIfEmpty(0).Max(),
            plan.NotPlanned
        );
    }
}

/// <summary>How a plan shifts with temperature: each other day is planned anew, when it is first asked for.</summary>
public sealed class OtherDays
{
    public static readonly OtherDays None = new(null);

    private readonly Lazy<ImmutableArray<OtherDay>> all;

    /// <param name="plan">The same work with the shop so many degrees warmer; null where nothing is planned.</param>
    internal OtherDays(Func<double, GluePlan>? plan) =>
        all = new(() =>
            plan is null
                ? []
                :
                [
                    .. new[] { DayTemperature.WarmerDegrees, -DayTemperature.WarmerDegrees }.Select(
                        d => OtherDay.Of(plan(d), d)
                    ),
                ]
        );

    /// <summary>The warmer first.</summary>
    public ImmutableArray<OtherDay> All => all.Value;
}
