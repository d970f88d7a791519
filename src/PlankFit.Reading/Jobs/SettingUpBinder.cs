using PlankFit.Planking;

namespace PlankFit.Reading;

/// <summary>[setting-up]: the edges of the bottom and what it is set up on.</summary>
internal static class SettingUpBinder
{
    public static SettingUpSpec Bind(TableReader? table, LengthUnit units)
    {
        table?.Close();
        return SettingUpSpec.Default;
    }
}
