using PlankFit.Reading.Text;
using PlankFit.Reading.Toml;

namespace PlankFit.Reading.Tables;

/// <summary>A value as a message shows it: as it is written, or what it is.</summary>
internal static class Written
{
    public static string Of(TomlNode node) =>
        node switch
        {
            TomlString text => Quoted.Of(text.Value),
            TomlNumber number => number.Text,
            TomlOther other => $"{other.Text} ({other.What})",
            TomlArray => "a list",
            _ => "a table",
        };
}
