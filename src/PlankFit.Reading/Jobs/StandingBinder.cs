using PlankFit.Planking;

namespace PlankFit.Reading;

/// <summary>[standing]: what was measured on the hull as it stands.</summary>
internal static class StandingBinder
{
    public static StandingSpec Bind(TableReader? table, LengthUnit units)
    {
        table?.Close();
        return StandingSpec.None;
    }
}
