//! Names in Chinese and Vietnamese, and a few in Thai, Hindi and Arabic, as [`super::languages`] has the others.
//! Source: common practice of laboratories, from memory.

use super::meanings::{Meaning, NOT_USED, Word, is, spellings};
use crate::soil::Property;

spellings! { CHINESE:
    is(Property::Ph) => "土壤ph 酸碱度";
    is(Property::OrganicMatter) => "有机质 土壤有机质 有机质含量";
    is(Property::OrganicCarbon) => "有机碳 土壤有机碳";
    is(Property::TotalN) => "全氮 总氮";
    is(Property::NitrateN) => "硝态氮";
    is(Property::AmmoniumN) => "铵态氮";
    is(Property::Phosphorus) => "有效磷 速效磷";
    is(Property::Potassium) => "速效钾 有效钾 交换性钾";
    is(Property::Calcium) => "交换性钙 有效钙";
    is(Property::Magnesium) => "交换性镁 有效镁";
    is(Property::Sodium) => "交换性钠";
    is(Property::Sulfur) => "有效硫";
    is(Property::Boron) => "有效硼";
    is(Property::Zinc) => "有效锌";
    is(Property::Manganese) => "有效锰";
    is(Property::Copper) => "有效铜";
    is(Property::Iron) => "有效铁";
    is(Property::Cec) => "阳离子交换量";
    is(Property::BaseSaturation) => "盐基饱和度";
    is(Property::Ec) => "电导率 土壤电导率";
    is(Property::BulkDensity) => "土壤容重 容重";
    is(Property::Sand) => "砂粒 砂粒含量";
    is(Property::Silt) => "粉粒 粉粒含量";
    is(Property::Clay) => "粘粒 黏粒 粘粒含量 黏粒含量";
    is(Property::Lead) => "铅 总铅";
    is(Property::Arsenic) => "砷 总砷";
    is(Property::Cadmium) => "镉 总镉";
    Meaning::Word(NOT_USED) =>
        "碱解氮 水解性氮 缓效钾 全磷 全钾 全盐量 水溶性盐总量 水溶性盐 含水率 含水量 水分 有效钼 有效硅 碳氮比 铬 汞 镍";
    Meaning::Word(Word::Nitrogen) => "氮";
    Meaning::Word(Word::Depth) => "深度 采样深度 取样深度 土层深度";
    Meaning::Word(Word::Texture) => "质地 土壤质地";
    Meaning::Word(Word::Sample(1)) => "地块 地块名称 采样地点 采样点 取样地点 田块";
    Meaning::Word(Word::Sample(4)) => "样品 样品编号 样品名称 样品号 样号 编号";
    Meaning::Word(Word::NameColumn) => "项目 检测项目 测定项目 检验项目 指标";
    Meaning::Word(Word::ResultColumn) => "检测结果 测定值 检测值 测定结果 检验结果 结果";
    Meaning::Word(Word::UnitColumn) => "单位 计量单位";
    Meaning::Word(Word::RatingColumn) => "等级 评价 丰缺等级 判定";
    Meaning::Word(Word::RangeColumn) => "标准值 适宜范围 参考范围 参考值 临界值 限量值 筛选值";
    Meaning::Word(Word::MethodColumn) => "检测方法 检测依据 检验方法 方法";
    Meaning::Word(Word::Advice) => "推荐施肥 施肥建议 推荐用量 施肥量";
}

spellings! { VIETNAMESE:
    is(Property::OrganicMatter) => "chathuuco";
    is(Property::Phosphorus) => "lan";
    is(Property::Calcium) => "canxi";
    is(Property::Magnesium) => "magie";
    is(Property::Ec) => "dodandien";
    Meaning::Word(Word::Nitrogen) => "dam";
    Meaning::Word(Word::Plain) => "detieu traodoi";
    Meaning::Word(Word::Depth) => "dosau";
    Meaning::Word(Word::Texture) => "thanhphancogioi";
    Meaning::Word(Word::Sample(1)) => "mau";
    Meaning::Word(Word::NameColumn) => "chitieu";
    Meaning::Word(Word::ResultColumn) => "ketqua";
    Meaning::Word(Word::UnitColumn) => "donvi";
    Meaning::Word(Word::RatingColumn) => "danhgia";
    Meaning::Word(Word::MethodColumn) => "phuongphap";
}

spellings! { SOUTHERN:
    is(Property::OrganicMatter) => "อินทรียวัตถุ ปริมาณอินทรียวัตถุ المادةالعضوية";
    is(Property::OrganicCarbon) => "जैविककार्बन";
    is(Property::Phosphorus) => "ฟอสฟอรัส ฟอสฟอรัสที่เป็นประโยชน์ फॉस्फोरस الفوسفور فسفر";
    is(Property::Potassium) => "โพแทสเซียม โพแทสเซียมที่แลกเปลี่ยนได้ पोटाश पोटैशियम البوتاسيوم پتاسیم";
    is(Property::Calcium) => "แคลเซียม الكالسيوم";
    is(Property::Magnesium) => "แมกนีเซียม المغنيسيوم";
    is(Property::Zinc) => "สังกะสี जस्ता";
    is(Property::Iron) => "เหล็ก लोहा";
    is(Property::Ec) => "การนำไฟฟ้า ค่าการนำไฟฟ้า التوصيلالكهربائي";
    Meaning::Word(Word::Sample(1)) => "ตัวอย่าง";
    Meaning::Word(Word::Sample(2)) => "แปลง";
    Meaning::Word(Word::NameColumn) => "รายการ รายการวิเคราะห์";
    Meaning::Word(Word::ResultColumn) => "ผล ผลวิเคราะห์ ผลการวิเคราะห์ ค่าที่วัดได้";
    Meaning::Word(Word::UnitColumn) => "หน่วย";
}

/// Words of ratings.
pub(super) const RATINGS: &str = "\
    极高 很高 高 中 中等 低 很低 极低 丰富 较丰富 缺乏 适宜 偏高 偏低 \
    높음 낮음 적정 적당 과다 부족 다소높음 다소낮음 \
    rendah sedang tinggi sangat masam agak netral basa rat cao thap ngheo giau";
