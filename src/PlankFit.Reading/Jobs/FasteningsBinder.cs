using PlankFit.Planking;

namespace PlankFit.Reading;

/// <summary>[fastenings]: how planks are held.</summary>
internal static class FasteningsBinder
{
    public static FasteningSpec? Bind(TableReader? table, LengthUnit units)
    {
        table?.Close();
        return null;
    }
}
