using System.Net;
using System.Net.NetworkInformation;
using System.Net.Sockets;
using PlankFit.Pages.Guarding;
using QRCoder;

namespace PlankFit.Pages.Serving;

/// <summary>The network of the shop, as far as this computer is on it.</summary>
internal static class ShopNetwork
{
    /// <summary>The first address by which others on the network reach this computer; null where there is none.</summary>
    public static IPAddress? Address() =>
        NetworkInterface
            .GetAllNetworkInterfaces()
            .Where(n =>
                n.OperationalStatus == OperationalStatus.Up
                && n.NetworkInterfaceType != NetworkInterfaceType.Loopback
            )
            .OrderByDescending(n => n.GetIPProperties().GatewayAddresses.Count)
            .SelectMany(n => n.GetIPProperties().UnicastAddresses)
            .Select(a => a.Address)
            .FirstOrDefault(a => a.AddressFamily == AddressFamily.InterNetwork);

    /// <summary>What the terminal shows once the door is shut.</summary>
    public static string Shut(string address) =>
        $"""

            On the shop's network: {address}   SHUT: {Door.MostRounds
                * Door.MostInAll} wrong codes were tried. Nobody else gets in until this program is started again;
            who was let in stays in, and this computer is served as before. Somebody on the network is guessing: find out who before you open it again.
            """;

    /// <summary>What the terminal shows of a code: where to go, the code, and both as a square to be photographed.</summary>
    public static string Shown(string address, string code)
    {
        using QRCodeData data = QRCodeGenerator.GenerateQrCode(
            $"{address}code#{code}",
            QRCodeGenerator.ECCLevel.L
        );
        using var square = new AsciiQRCode(data);
        string spoken = $"{code[..4]} {code[4..]}";
        return $"""

            On the shop's network: {address}   code {spoken}   (plain http: who watches this network can read it)
            {square.GetGraphicSmall()}
            """;
    }
}
