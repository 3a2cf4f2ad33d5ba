import Foundation
import HoldfastKit

/// The field that says which variant it is, for those the core writes with their fields.
private let tags = ["PieceKindView": "kind", "Reason": "rule", "Row": "row", "Tap": "tap"]

/// A record as JSON, in the shape the core's own has.
func dump(_ value: Any) -> NSObject {
    let mirror = Mirror(reflecting: value)
    switch value {
    case let text as String: return text as NSString
    case let yes as Bool: return NSNumber(value: yes)
    case let length as Duration: return NSNumber(value: length.milliseconds)
    case let day as Day: return "\(day)" as NSString
    case let id as UUID: return id.uuidString.lowercased() as NSString
    case let exercise as Exercise:
        return [exercise.movement, exercise.option].compactMap { $0 }.joined(separator: "/") as NSString
    case let mass as Mass: return NSNumber(value: mass.tenNg)
    case let number as any BinaryInteger: return NSNumber(value: Int64(number))
    default: break
    }
    switch mirror.displayStyle {
    case .optional: return mirror.children.first.map { dump($0.value) } ?? NSNull()
    case .collection: return mirror.children.map { dump($0.value) } as NSArray
    case .enum: return variant(value, mirror)
    default: return fields(mirror) as NSDictionary
    }
}

private func variant(_ value: Any, _ mirror: Mirror) -> NSObject {
    // A variant with fields has them as the one child; one without is its name.
    let held = mirror.children.first
    let name = words(held?.label ?? "\(value)", "-") as NSString
    guard let tag = tags["\(mirror.subjectType)"] else { return name }
    var shown = held.map { fields(of: $0.value) } ?? [:]
    shown[tag] = name
    return shown as NSDictionary
}

/// Several fields come as a tuple with labels; a single one too.
private func fields(of held: Any) -> [String: NSObject] { fields(Mirror(reflecting: held)) }

private func fields(_ mirror: Mirror) -> [String: NSObject] {
    var shown: [String: NSObject] = [:]
    for child in mirror.children { shown[words(child.label!, "_")] = dump(child.value) }
    return shown
}

private func words(_ name: String, _ between: String) -> String {
    name.reduce(into: "") { text, letter in
        if letter.isUppercase, !text.isEmpty { text += between }
        text += letter.lowercased()
    }
}
